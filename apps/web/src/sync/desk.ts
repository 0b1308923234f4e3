const storeKey = "formweek.desk";

/** Names this browser towards the server, so that what was done in it can be taken back in it after a reload, and nowhere else. */
export function deskOfBrowser(): string {
  const known = localStorage.getItem(storeKey);
  if (known !== null && known !== "") return known;
  const made = [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
  localStorage.setItem(storeKey, made);
  return made;
}
