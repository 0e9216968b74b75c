/** Refuses a Node that the product does not run on, by name, before anything is installed. */
export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Pullbook runs on Node 20.19 and newer; this is ${process.versions.node}.`);
  process.exit(1);
}
