/** What every answer carries, so that a browser does nothing with it that we didn't mean. */
import { isSecure, ownOrigin } from './setting';

const BASE: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  // Not `no-referrer`: with that, browsers send `Origin: null` with our own forms.
  'referrer-policy': 'same-origin',
  'permissions-policy':
    'accelerometer=(), autoplay=(), camera=(self), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), payment=(), usb=()',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

export const safeHeaders = (): Readonly<Record<string, string>> =>
  isSecure() ? { ...BASE, 'strict-transport-security': 'max-age=31536000; includeSubDomains' } : BASE;

/** Only scripts and styles that carry this answer's nonce, or that such a script loads; nothing from elsewhere. */
export const contentPolicy = (nonce: string, isDevelopment: boolean): string =>
  [
    "default-src 'self'",
    // A development server's own tools evaluate text and write styles.
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    ...(isDevelopment
      ? ["style-src 'self' 'unsafe-inline'"]
      : [`style-src 'self' 'nonce-${nonce}'`, "style-src-attr 'none'"]),
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${isDevelopment ? ` ${ownOrigin().replace(/^http/, 'ws')}` : ''}`,
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
    ...(isSecure() ? ['upgrade-insecure-requests'] : []),
  ].join('; ');
