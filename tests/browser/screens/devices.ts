import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { signIn } from '../sign-in.js';
import { people, type Person, type Screen } from './screen.js';

type Kept = Awaited<ReturnType<BrowserContext['storageState']>>;

/** Opens screens on devices of their own, each person signed in once. */
export class Devices {
  private readonly kept = new Map<Person, Promise<Kept>>();

  constructor(
    private readonly browser: Browser,
    private readonly origin: string,
  ) {}

  /** A new device with the screen on it. Close its context. */
  async open(
    screen: Screen,
    options: BrowserContextOptions = {},
  ): Promise<{ context: BrowserContext; page: Page }> {
    const state = await this.stateOf(screen.who);
    const context = await this.browser.newContext({
      baseURL: this.origin,
      viewport: { width: 1180, height: 820 },
      ...(state === null ? {} : { storageState: state }),
      ...options,
    });
    const page = await context.newPage();
    await screen.open(page, context);
    return { context, page };
  }

  private async stateOf(who: Person): Promise<Kept | null> {
    if (who === 'nobody') return null;
    const known = this.kept.get(who) ?? this.signedIn(people[who]);
    this.kept.set(who, known);
    return known;
  }

  private async signedIn(email: string): Promise<Kept> {
    const { context } = await signIn(this.browser, this.origin, email);
    const state = await context.storageState();
    await context.close();
    return state;
  }
}
