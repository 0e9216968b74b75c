import { defineConfig } from 'prisma/config';

export default defineConfig({ schema: import.meta.dirname });
