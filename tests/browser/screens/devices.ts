import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { newBookOwner, startNewBook } from '../new-book.js';
import type { Product } from '../product.js';
import { signIn } from '../sign-in.js';
import { closeDevice } from './close-device.js';
import { inTime } from './in-time.js';
import { people, type Person, type Screen } from './screen.js';

/** A device that is only signed in with keeps nothing for when there is no network. */
const lean = { serviceWorkers: 'block' } as const;

type Kept = Awaited<ReturnType<BrowserContext['storageState']>>;

/** Opens screens on devices of their own, each person signed in once. Close them. */
export class Devices {
  private readonly kept = new Map<string, Promise<Kept>>();
  private newBook: Promise<Product> | undefined;

  constructor(
    private readonly browser: Browser,
    private readonly origin: string,
  ) {}

  /** A new device with the screen on it. Close it with `closeDevice`. */
  async open(
    screen: Screen,
    options: BrowserContextOptions = {},
  ): Promise<{ context: BrowserContext; page: Page }> {
    const state = await this.stateOf(screen);
    const opening = this.browser.newContext({
      baseURL: await this.originOf(screen),
      viewport: { width: 1180, height: 820 },
      serviceWorkers: screen.keepsShell === true ? 'allow' : 'block',
      ...(state === null ? {} : { storageState: state }),
      ...options,
    });
    const context = await inTime('a device to be opened', opening);
    try {
      const page = await inTime('its page to be opened', context.newPage());
      await screen.open(page, context);
      return { context, page };
    } catch (error) {
      await closeDevice(context);
      throw error;
    }
  }

  /** Ends the book that was opened for them. */
  async close(): Promise<void> {
    await (await this.newBook)?.stop();
  }

  private async originOf({ book }: Screen): Promise<string> {
    if (book === undefined) return this.origin;
    this.newBook ??= startNewBook();
    return (await this.newBook).origin;
  }

  private async stateOf(screen: Screen): Promise<Kept | null> {
    if (screen.who === 'nobody') return null;
    const key = `${screen.book ?? 'demo'} ${screen.who}`;
    const known = this.kept.get(key) ?? this.signedIn(screen, screen.who);
    this.kept.set(key, known);
    return known;
  }

  private async signedIn(screen: Screen, who: Exclude<Person, 'nobody'>): Promise<Kept> {
    const origin = await this.originOf(screen);
    const { context } =
      screen.book === 'new'
        ? await signIn(this.browser, origin, newBookOwner.email, { ...lean, password: newBookOwner.password })
        : await signIn(this.browser, origin, people[who], lean);
    const state = await inTime('what the device keeps of signing in', context.storageState());
    await closeDevice(context);
    return state;
  }
}
