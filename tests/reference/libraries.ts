/** Libraries of others whose answers truth tests take as right. */
export const LIBRARIES = { odex: 'odex (Hairer and Wanner)' } as const;
