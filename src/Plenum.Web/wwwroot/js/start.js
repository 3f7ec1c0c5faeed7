// What every page has: keys, the connection's state, what was typed.

import { watchConnection } from './connection.js';
import { listenToCopying } from './copying.js';
import { listenToKeys } from './keys.js';
import { steerTables } from './tables.js';

listenToKeys();
listenToCopying();
steerTables();
watchConnection();
