import { config } from 'zod';

// Before any schema is made: they must not try to compile themselves, which the page's content security policy
// forbids, rightly.
config({ jitless: true });
