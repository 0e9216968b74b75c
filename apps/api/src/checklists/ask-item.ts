import type { ChecklistItem, SignOffItem } from '@pullbook/contracts';
import type { z } from 'zod';

type Asked = Pick<z.infer<typeof SignOffItem>, 'key' | 'question' | 'builtInQuestion' | 'evidence'>;

/** An item as a sign-off asks it; where the workshop says it in its own words, the built-in ones stand beside them. */
export function askItem({ key, text, evidence, builtIn }: ChecklistItem): Asked {
  const builtInQuestion = builtIn === null || builtIn.text === text ? null : builtIn.text;
  return { key, question: text, builtInQuestion, evidence };
}
