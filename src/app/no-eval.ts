import { config } from 'zod';

// The page's policy forbids building code from text, which zod would otherwise try.
config({ jitless: true });
