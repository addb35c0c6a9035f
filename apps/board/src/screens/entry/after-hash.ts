/** What stands behind the # of this page's address: a code or a token, which so never reaches a server's log. */
export const afterHash = (hash: string): string => {
  try {
    return decodeURIComponent(hash.replace(/^#/, '')).trim();
  } catch {
    return '';
  }
};
