/** A plate as it is compared: capitals and digits only, so that spaces and dashes make no second car. */
export function plateKey(plate: string): string {
  return plate
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{Letter}\p{Number}]/gu, '');
}
