import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** A text that can be checked at any time, and the check sum that stands for it. */
export interface Seal {
  /** Canonical JSON (RFC 8785). */
  readonly sealedText: string;
  /** SHA-256 over the text's UTF-8 bytes, hexadecimal. */
  readonly sealSha256: string;
}

/**
 * Seals what a sign-off covers: canonical JSON by RFC 8785, then SHA-256. The same content gives the same seal,
 * whatever order its members were written in.
 *
 * @param content plain data; numbers must be finite
 * @throws TypeError for content that is no JSON
 */
export function sealContent(content: unknown): Seal {
  const sealedText = canonicalize(content);
  if (sealedText === undefined) throw new TypeError('sealContent requires plain data, got undefined');
  return { sealedText, sealSha256: sha256Of(sealedText) };
}

/** Whether a stored text still has the check sum that it was sealed with. */
export function sealHolds(seal: Seal): boolean {
  return sha256Of(seal.sealedText) === seal.sealSha256;
}

function sha256Of(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
