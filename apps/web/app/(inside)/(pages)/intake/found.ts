import type { Lookalikes } from '@pullbook/contracts';

/** Customers and cars on record that look like the ones being typed in. */
export type Found = (typeof Lookalikes)['_output'];
