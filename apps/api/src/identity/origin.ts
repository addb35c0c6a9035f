/** Whether a page of this very host sent the request; a request without an origin was sent by no page. */
export function isOwnOrigin(origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined) return true;
  try {
    const { protocol, host: from } = new URL(origin);
    return host !== undefined && from !== '' && from === new URL(`${protocol}//${host}`).host;
  } catch {
    return false;
  }
}
