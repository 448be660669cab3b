// The car in hand, remembered in this browser: for each page the address that shows it. recall.js reads it before a page is drawn.
const place = `heaveline in hand ${document.documentElement.dataset.garage}`;

/** Remembers the pages' addresses by their paths; null forgets them. A browser that lets nothing be stored remembers nothing. */
export function keep(links) {
    stored((storage) => (links ? storage.setItem(place, JSON.stringify(links)) : storage.removeItem(place)));
}

/** The query of the pass, which says everything; null where nothing is remembered. */
export function last() {
    const links = JSON.parse(stored((storage) => storage.getItem(place)) ?? "null");
    return links?.["/pass"] ? new URL(links["/pass"], location.origin).search : null;
}

function stored(act) {
    try {
        return act(localStorage);
    } catch (refusal) {
        if (refusal instanceof DOMException) return null;
        throw refusal;
    }
}
