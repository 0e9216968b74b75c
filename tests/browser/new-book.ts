import { startProduct, type Product } from './product.js';

/** Who opened the new book. */
export const newBookOwner = {
  email: 'first@pullbook.example',
  password: 'a-book-just-opened',
} as const;

/** A book that has just been opened by its first owner and holds nothing else. Stop it. */
export async function startNewBook(): Promise<Product> {
  const product = await startProduct('serve');
  const code = await codeOf(product);
  const made = await fetch(`${product.origin}/api/v1/first-owner`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: product.origin },
    body: JSON.stringify({
      ...newBookOwner,
      code,
      workshopName: 'New workshop',
      name: 'Ines Dorv',
    }),
  });
  if (!made.ok) throw new Error(`no first owner: ${made.status} ${await made.text()}`);
  return product;
}

/** The code that the server prints once it listens. */
async function codeOf({ output }: Product): Promise<string> {
  for (let tries = 0; tries < 100; tries += 1) {
    const code = /[A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}/.exec(output())?.[0];
    if (code !== undefined) return code;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`no code for the first owner:\n${output()}`);
}
