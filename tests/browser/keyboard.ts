import type { Page } from 'playwright-core';

/** What has the focus, as a person at the keyboard meets it. */
export interface Stop {
  readonly name: string;
  readonly kind: string;
  /** Whether its looks tell that it has the focus: an outline, or a ring around the box that it stands in. */
  readonly isMarked: boolean;
  readonly isInWindow: boolean;
  /** Place among the elements of the page; -1 where nothing has the focus. */
  readonly place: number;
}

/** What has the focus now. */
export function stopOf(page: Page): Promise<Stop> {
  return page.evaluate(() => {
    const here = document.activeElement;
    if (!(here instanceof HTMLElement) || here === document.body) {
      return { name: '', kind: 'nothing', isMarked: true, isInWindow: true, place: -1 };
    }
    const nameOf = (element: HTMLElement) => {
      const labels = [...((element as HTMLInputElement).labels ?? [])].map((one) => one.innerText).join(' ');
      return (element.getAttribute('aria-label') ?? (labels === '' ? element.innerText : labels)).trim();
    };
    const hasOutline = ({ outlineStyle, outlineWidth }: CSSStyleDeclaration) =>
      outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    const hasRing = (element: Element | null) =>
      element !== null && / 0px 0px 0px [2-9]px/.test(getComputedStyle(element).boxShadow);
    const { left, right, top, bottom } = here.getBoundingClientRect();
    const isAcross = right > 0 && left < window.innerWidth;
    return {
      name: nameOf(here),
      kind: here.getAttribute('type') ?? here.tagName.toLowerCase(),
      isMarked: hasOutline(getComputedStyle(here)) || hasRing(here) || hasRing(here.parentElement),
      isInWindow: isAcross && bottom > 0 && top < window.innerHeight,
      place: [...document.querySelectorAll('*')].indexOf(here),
    };
  });
}

/** More stops than any page has. */
const mostStops = 250;

/**
 * A person without a mouse: presses keys and looks. Every stop on the way has to show that it has the focus and to lie
 * in the window, and the next press has to lead on.
 */
export class Keyboard {
  /** How many stops were looked at. */
  stopCount = 0;

  constructor(private readonly page: Page) {}

  /** Presses Tab, or Shift+Tab, until something of this name has the focus. */
  async reach(name: string | RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<Stop> {
    const isIt = (stop: Stop) =>
      stop.place >= 0 && (typeof name === 'string' ? stop.name === name : name.test(stop.name));
    const seen: string[] = [];
    let stop = await stopOf(this.page);
    while (!isIt(stop)) {
      if (seen.length > mostStops)
        throw new Error(`${String(name)} is not reached; met: ${seen.join(' | ')}`);
      stop = await this.step(key, stop);
      seen.push(stop.name.slice(0, 30));
    }
    return stop;
  }

  /** Presses Tab once. @throws Error where it leads nowhere, or to something that does not show it */
  async step(key: 'Tab' | 'Shift+Tab', from: Stop): Promise<Stop> {
    await this.page.keyboard.press(key);
    const stop = await stopOf(this.page);
    this.stopCount += 1;
    const what = `${stop.kind} “${stop.name.slice(0, 50)}”`;
    // Day, month, year, hour, minute and calendar are stops of their own within one field; the browser marks each.
    const isInParts = stop.kind === 'datetime-local' && stop.place === from.place;
    if (stop.place === from.place && stop.place >= 0 && !isInParts)
      throw new Error(`${key} does not lead out of ${what}`);
    if (!stop.isMarked && !isInParts) throw new Error(`${what} does not show that it has the focus`);
    if (!stop.isInWindow) throw new Error(`${what} has the focus out of sight`);
    return stop;
  }

  /** Goes to a field and writes into it, over what stands there. */
  async write(name: string | RegExp, text: string): Promise<void> {
    await this.reach(name);
    await this.page.keyboard.press('Control+a');
    await this.page.keyboard.type(text);
  }

  /** Goes to a button or link and presses it. */
  async press(name: string | RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    await this.reach(name, key);
    await this.page.keyboard.press('Enter');
  }

  /** Ticks the next boxes, each by the space bar. */
  async tick(count: number): Promise<void> {
    for (let n = 0; n < count; n += 1) {
      let stop = await stopOf(this.page);
      const isOpenBox = () =>
        this.page.evaluate(() => {
          const here = document.activeElement;
          return here instanceof HTMLInputElement && here.type === 'checkbox' && !here.checked;
        });
      for (let guard = 0; !(await isOpenBox()); guard += 1) {
        if (guard > mostStops) throw new Error(`only ${n} of ${count} boxes are reached`);
        stop = await this.step('Tab', stop);
      }
      await this.page.keyboard.press('Space');
    }
  }
}
