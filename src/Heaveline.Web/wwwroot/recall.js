// A page whose address names no car opens with the last one of this browser: its whole address stands in the browser's storage, written by
// inhand.js. Runs before anything is drawn, so it is no module.
(() => {
    const asked = new URLSearchParams(location.search);
    const pages = ["/pass", "/rule", "/link", "/ride", "/report"];
    if (asked.has("car") || !pages.includes(location.pathname)) return;
    let text;
    try {
        text = localStorage.getItem(`heaveline in hand ${document.documentElement.dataset.garage}`);
    } catch (refusal) {
        if (refusal instanceof DOMException) return;
        throw refusal;
    }

    const link = JSON.parse(text ?? "null")?.[location.pathname];
    if (!link) return;
    const to = new URL(link, location.origin);
    // What the address does say goes before what is remembered.
    for (const [key, word] of asked) to.searchParams.set(key, word);
    if (to.pathname === location.pathname && to.searchParams.has("car")) location.replace(to.pathname + to.search + location.hash);
})();
