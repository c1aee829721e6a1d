import { defineConfig } from 'vitest/config';

export default defineConfig({ test: { include: ['tests/campaigns/**/*.campaign.ts'], pool: 'forks' } });
