/** Names of the live messages and the address of the socket. */
export const LIVE = { path: '/live', change: 'change', beat: 'beat' } as const;
