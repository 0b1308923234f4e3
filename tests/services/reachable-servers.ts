/** A server that the suites may use: its address, or null when there is none (said once when the suites start). */
export const testDatabaseUrl: string | null = process.env["FORMWEEK_TEST_DATABASE_URL"] ?? null;
export const testRedisUrl: string | null = process.env["FORMWEEK_TEST_REDIS_URL"] ?? null;
