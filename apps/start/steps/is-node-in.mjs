/**
 * Whether a Node is in a range of `engines`. Only what package.json says is understood, since nothing is installed yet
 * that could read more: lines of Node, each from a minor on.
 *
 * @param {string} range '^20.19 || ^24'
 * @param {string} version '20.19.0'
 * @returns {boolean}
 */
export function isNodeIn(range, version) {
  const [major, minor] = version.split('.').map(Number);
  return range.split(' || ').some((line) => {
    const parts = /^\^(\d+)(?:\.(\d+))?$/.exec(line);
    if (parts === null) throw new Error(`a range of Node that is not understood: ${line}`);
    return major === Number(parts[1]) && minor >= Number(parts[2] ?? 0);
  });
}
