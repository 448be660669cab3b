// Readings of a worksheet, kept while the browser's window is open: closing the sheet and loading the page anew lose nothing.
const prefix = () => `heaveline worksheet ${document.documentElement.dataset.garage} `;

/** The window's storage; null where it has none for pages. */
function storage() {
    try {
        return window.sessionStorage;
    } catch {
        return null;
    }
}

/** Keeps what is typed. */
export function keep(name, typed) {
    try {
        storage()?.setItem(prefix() + name, JSON.stringify(typed));
    } catch (full) {
        // Without room the readings stand on the page alone.
        if (!(full instanceof DOMException)) throw full;
    }
}

/** What was typed; null for nothing. */
export const recall = (name) => JSON.parse(storage()?.getItem(prefix() + name) ?? "null");

/** Forgets what was typed under names that begin so. */
export function forget(name) {
    for (const key of Object.keys(storage() ?? {}).filter((one) => one.startsWith(prefix() + name))) storage().removeItem(key);
}

/** Puts the hand back on the field. */
export const focus = (id) => heaveline.onward(document.getElementById(id));
