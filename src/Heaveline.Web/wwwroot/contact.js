/* What the page does when it loses the program: it asks until the program answers, then goes on by itself. Where the program is a new one the page is
   loaded anew, which loses nothing: its state stands in its address, unsaved numbers in the browser (drafts.js). */
const dialog = document.getElementById("components-reconnect-modal");
const { dataset } = document.documentElement;
// Pauses between two asks, ms; the last one is kept to.
const pauses = [250, 500, 1_000, 2_000, 3_000, 5_000];
let state = "hide";
let watching = false;
let wake = () => {};
let isLeaving = false;

dialog.addEventListener("components-reconnect-state-changed", ({ detail }) => {
    state = detail.state;
    if (state === "hide") {
        delete dataset.contact;
        document.dispatchEvent(new CustomEvent("heaveline-contact"));
    } else {
        dataset.contact ??= "lost";
        watch();
        // The framework has given up: whoever answers now is asked for this page anew.
        if (state === "rejected") wake();
    }
});

// The browser asks nobody about leaving a page that comes back with everything on it.
window.addEventListener("beforeunload", (event) => isLeaving && event.stopImmediatePropagation(), true);
window.addEventListener("online", () => wake());
document.addEventListener("visibilitychange", () => wake());

async function watch() {
    if (watching) return;
    watching = true;
    for (let asked = 0; dataset.contact; asked++) {
        await new Promise((done) => {
            wake = done;
            setTimeout(done, pauses[Math.min(asked, pauses.length - 1)]);
        });
        if (dataset.contact && document.visibilityState === "visible" && await answers()) await goOn();
    }
    watching = false;
}

async function answers() {
    try {
        const answer = await fetch("_content/Heaveline.Web/mark.svg", { cache: "no-store", signal: AbortSignal.timeout(4_000) });
        // One that asks for its code answers too.
        return answer.ok || answer.status === 401;
    } catch {
        return false;
    }
}

async function goOn() {
    if (state === "rejected" || (state === "failed" && !await Blazor.reconnect().catch(() => false))) {
        if (dataset.draft === "unkept") dataset.contact = "back";
        else {
            isLeaving = true;
            location.reload();
        }
    } else if (state !== "failed") {
        // The framework's own waiting ends early where somebody looks at the page again.
        document.dispatchEvent(new Event("visibilitychange"));
    }
}
