import type { NextConfig } from "next";

/** Headers that do not change from request to request; the content security policy carries a nonce and is set in proxy.ts. */
const securityHeaders = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "Permissions-Policy", value: "camera=(), microphone=(), geolocation=(), payment=(), usb=()" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
];

const nextConfig: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  transpilePackages: [
    "@probeworthy/circuit",
    "@probeworthy/database",
    "@probeworthy/diagram",
    "@probeworthy/evaluation",
    "@probeworthy/gradebook",
    "@probeworthy/instruments",
    "@probeworthy/training-vehicle",
    "@probeworthy/vehicle",
  ],
  // These load WebAssembly, native code or their own files by path and break when bundled.
  serverExternalPackages: [
    "@electric-sql/pglite",
    "@node-rs/argon2",
    "@prisma/adapter-pg",
    "@prisma/client",
    "@prisma/schema-engine-wasm",
    "pdfkit",
    "pg",
    "pglite-prisma-adapter",
    "pino",
  ],
  headers: async () => [{ source: "/:path*", headers: securityHeaders }],
};

export default nextConfig;
