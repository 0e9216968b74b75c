import { useRef } from 'react';

/** A random UUID (RFC 9562, version 4); works on plain http too, where `crypto.randomUUID` is missing. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

interface Intent {
  /** The same key for the same content until `done`: a retry makes one record, an edited form makes a new try. */
  keyFor: (content: unknown) => string;
  /** The record is made; whatever comes next is a new intent, even with the same content. */
  done: () => void;
}

/** One Idempotency-Key per intent of a person. */
export function useIntentKey(): Intent {
  const held = useRef<{ content: string; key: string } | null>(null);
  return {
    keyFor: (content) => {
      const text = JSON.stringify(content);
      if (held.current?.content !== text) held.current = { content: text, key: newKey() };
      return held.current.key;
    },
    done: () => {
      held.current = null;
    },
  };
}
