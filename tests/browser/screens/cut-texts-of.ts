import type { Page } from 'playwright-core';

/**
 * Texts of a page that cannot be read whole: cut off by a box that hides what runs over its edge, standing out of the
 * box that they belong to, or outside of the page where no scrolling leads; and choices too narrow for what they show.
 * What is meant for screen readers only is left out. @returns one line each, with what is wrong
 */
export async function cutTextsOf(page: Page): Promise<string[]> {
  return [...(await textsCutOff(page)), ...(await choicesTooNarrow(page))];
}

function textsCutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    /** Rounding of glyphs and borders, px. */
    const slack = 2;
    const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip';
    const scrolls = (overflow: string) => overflow === 'auto' || overflow === 'scroll';
    const nameOf = (element: Element) =>
      `${element.tagName.toLowerCase()}.${(element.getAttribute('class') ?? '').split(' ')[0]}`;
    const isOver = (low: number, high: number, edgeLow: number, edgeHigh: number) =>
      low < edgeLow - slack || high > edgeHigh + slack;

    /** The next box around this one that may cut it off; none around what stands fixed in the window. */
    const outOf = (box: Element): Element | null => {
      const { parentElement } = box;
      const isLast = getComputedStyle(box).position === 'fixed' || parentElement === document.documentElement;
      return isLast ? null : parentElement;
    };
    /** What is wrong with a text in this place, looking out from its box to the page. */
    const cutBy = (text: DOMRect, element: Element): string | null => {
      let { left, right, top, bottom } = text;
      for (let box: Element | null = element; box !== null; box = outOf(box)) {
        const { overflowX, overflowY } = getComputedStyle(box);
        const edge = box.getBoundingClientRect();
        const isCutAside = hides(overflowX) && isOver(left, right, edge.left, edge.right);
        const isCutBelow = hides(overflowY) && isOver(top, bottom, edge.top, edge.bottom);
        if (isCutAside || isCutBelow) return `cut by ${nameOf(box)}`;
        // What a person can scroll to is not lost; from here on the place that scrolls has to be seen.
        if (scrolls(overflowX)) [left, right] = [edge.left, edge.right];
        if (scrolls(overflowY)) [top, bottom] = [edge.top, edge.bottom];
      }
      return isOver(left, right, 0, document.documentElement.clientWidth) ? 'outside of the page' : null;
    };
    /** The nearest box that text is laid out in. */
    const boxOf = (element: Element): Element => {
      let box = element;
      while (getComputedStyle(box).display === 'inline' && box.parentElement !== null)
        box = box.parentElement;
      return box;
    };
    const standsOut = (text: DOMRect, element: Element): boolean => {
      if (element.closest('svg') !== null) return false;
      const edge = boxOf(element).getBoundingClientRect();
      return isOver(text.left, text.right, edge.left, edge.right);
    };
    const isLookedAt = (element: Element) =>
      !element.matches('style, script, option, .unseen, .unseen *') &&
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    const faultOf = (node: Node, element: Element): string | null => {
      const range = document.createRange();
      range.selectNodeContents(node);
      const texts = [...range.getClientRects()].filter((one) => one.width > 0);
      const cut = texts.map((one) => cutBy(one, element)).find((one) => one !== null);
      return cut ?? (texts.some((one) => standsOut(one, element)) ? 'stands out of its box' : null);
    };

    const faults: string[] = [];
    const root = document.querySelector('dialog[open]') ?? document.body;
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const words = (node.textContent ?? '').trim().slice(0, 60);
      const element = node.parentElement;
      if (element === null || words === '' || !isLookedAt(element)) continue;
      const fault = faultOf(node, element);
      if (fault !== null) faults.push(`“${words}” in ${nameOf(element)}: ${fault}`);
    }
    return [...new Set(faults)];
  });
}

/** A closed choice cuts off what it shows without a trace: a copy as wide as it likes tells the width that it wants. */
function choicesTooNarrow(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const root = document.querySelector('dialog[open]') ?? document.body;
    return [...root.querySelectorAll('select')].flatMap((choice) => {
      const [chosen] = choice.selectedOptions;
      if (chosen === undefined || !choice.checkVisibility()) return [];
      const alone = choice.cloneNode(false) as HTMLSelectElement;
      alone.append(chosen.cloneNode(true));
      alone.style.cssText = 'position:fixed;width:auto;min-width:0;max-width:none;visibility:hidden';
      choice.parentElement?.append(alone);
      const wantedPx = alone.getBoundingClientRect().width;
      alone.remove();
      const isCut = wantedPx > choice.getBoundingClientRect().width + 2;
      return isCut ? [`choice “${chosen.text.slice(0, 60)}” is too narrow for what it shows`] : [];
    });
  });
}
