export { buildApp, type App, type AppOptions } from './app.js';
export { openObjectStore, type ObjectStore } from './plumbing/object-store.js';
export {
  openTestWorkshop,
  testPassword,
  type TestPerson,
  type TestWorkshop,
} from './plumbing/test-workshop.js';
export { readSettings, SettingError, type Settings } from './settings.js';
export { startServer, type RunningServer } from './start-server.js';
