import type { Screen } from './screen.js';

const newOwner = { who: 'owner', book: 'new' } as const;

const empty = (address: string, text: string | RegExp): Screen['open'] => {
  return async (page) => {
    await page.goto(address);
    await page.getByText(text).first().waitFor();
  };
};

/** What an owner sees who has just opened a book: places that are empty and say what to do first. */
export const newBookScreens: readonly Screen[] = [
  {
    ...newOwner,
    name: 'board-empty',
    route: '/board',
    open: empty('/board', 'No car is in the house, and none is booked.'),
  },
  { ...newOwner, name: 'cars-empty', route: '/cars', open: empty('/cars', 'No car is in the book yet.') },
  {
    ...newOwner,
    name: 'customers-empty',
    route: '/customers',
    open: empty('/customers', 'No customer is in the book yet.'),
  },
  { ...newOwner, name: 'logs-empty', route: '/logs', open: empty('/logs', 'No file waits.') },
  {
    ...newOwner,
    name: 'controllers-empty',
    route: '/controllers',
    open: empty('/controllers', 'No kind of controller is described yet.'),
  },
  { ...newOwner, name: 'workshop-new', route: '/workshop', open: empty('/workshop', 'Team') },
];
