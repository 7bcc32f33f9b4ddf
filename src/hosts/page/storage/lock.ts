/**
 * Keeps a workbook to this tab until what it returns is called: one that two tabs change at once
 * would lose what one of them did.
 */
export async function lockBook(id: string): Promise<() => void> {
  return new Promise((resolve, reject) => {
    void navigator.locks.request(`book ${id}`, { ifAvailable: true }, (lock) => {
      if (!lock) {
        reject(new Error("it is open in another tab"));
        return;
      }
      return new Promise<void>((release) => {
        resolve(release);
      });
    });
  });
}
