// Loaded into servers that live for one file of tests: what they would gain by compiling twice, they never get back.
import { setFlagsFromString } from 'node:v8';

for (const flag of ['--no-opt', '--no-maglev']) setFlagsFromString(flag);
