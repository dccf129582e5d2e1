/** What a page of the editor may load and do. Everything comes from the editor's own address. */
const directives = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** The policy for a <meta> element, so that any static host has it. */
export const POLICY = directives.join('; ');

/** The policy for a header, with what a <meta> cannot say. */
export const HEADER_POLICY = [...directives, "frame-ancestors 'none'"].join('; ');
