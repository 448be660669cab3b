/* Unsaved texts of a file, kept in the browser's own storage until they are saved or given up: a program that ends, a page loaded anew and a window
   that is closed lose nothing. What is typed is kept at once, before the program has heard of it. */
const prefix = "heaveline draft ";
// Two texts of the longest file that is read, and room for their marks.
const longest = 700_000;
// Longer than what is typed is on its way to the program, ms.
const underway = 2_000;
const isLost = () => document.documentElement.dataset.contact !== undefined;
const field = (place) => document.getElementById(place)
    ?? [...document.querySelectorAll(".the-form [aria-label]")].find((one) => one.ariaLabel === place);

/** The browser's storage; null where it has none for pages. */
function storage() {
    try {
        return window.localStorage;
    } catch {
        return null;
    }
}

/** Begins to keep what becomes of a text: its garage and file, the text as it was read and its stamp. */
export function begin(garage, file, stamp, saved) {
    const key = prefix + JSON.stringify([garage, file, crypto.getRandomValues(new Uint32Array(2)).join("")]);
    let draft = { stamp, saved, text: saved };
    let late = new Map();
    let release = () => {};
    let isOver = false;
    // Held as long as the page lives: the draft of a window that is open is offered in no other one.
    navigator.locks?.request(key, () => new Promise((done) => { release = done; }));

    const typed = (event) => {
        const place = event.target.id || event.target.ariaLabel;
        if (event.target.closest?.(".the-form") && (event.target.id === "text" || event.target.closest(".field")) && place) {
            const label = event.target.closest("[role=group]")?.ariaLabel ?? "";
            late.set(place, { label, value: event.target.value, at: performance.now() });
            write();
        }
    };
    const entries = () => [...late].map(([place, { label, value }]) => ({ place, label, value }));
    // What was typed while the program was out of reach.
    const again = () => type(entries(), true);
    document.addEventListener("input", typed, true);
    document.addEventListener("heaveline-contact", again);

    function write() {
        if (isOver) return true;
        const { dataset } = document.documentElement;
        if (draft.text === draft.saved && late.size === 0) {
            storage()?.removeItem(key);
            delete dataset.draft;
            return true;
        }
        const words = JSON.stringify({ ...draft, at: Date.now(), late: entries() });
        try {
            if (words.length > longest) throw new RangeError("longer than a browser is asked to keep");
            window.localStorage.setItem(key, words);
            dataset.draft = "kept";
        } catch {
            dataset.draft = "unkept";
        }
        return dataset.draft === "kept";
    }

    // What was typed long enough ago stands in the text that the program has made of it.
    function prune() {
        for (const [place, { at }] of late) {
            if (performance.now() - at > underway && !isLost()) late.delete(place);
        }
        return write();
    }

    return {
        /** The text as the program has it now, and what it was made from; without a text: as before. */
        keep(text, nextStamp, nextSaved) {
            // A save has heard everything.
            if (text !== null && text === nextSaved && nextStamp !== draft.stamp) late.clear();
            if (text !== null) draft = { stamp: nextStamp, saved: nextSaved, text };
            if (late.size > 0) setTimeout(prune, underway + 50);
            return prune();
        },
        /** Forgets it. */
        drop() {
            late.clear();
            draft.text = draft.saved;
            write();
        },
        /** Lets go of it; a draft stays. */
        end() {
            isOver = true;
            document.removeEventListener("input", typed, true);
            document.removeEventListener("heaveline-contact", again);
            delete document.documentElement.dataset.draft;
            release();
        },
    };
}

/** The newest draft of a file that no open window is writing; null when there is none. What came of nothing is cleared away. */
export async function find(garage, file, stamp, saved) {
    const held = new Set((await navigator.locks?.query())?.held.map((one) => one.name));
    const start = prefix + JSON.stringify([garage, file]).slice(0, -1) + ",";
    const isOf = (key) => key.startsWith(start) && !held.has(key);
    const found = [];
    for (const key of Object.keys(storage() ?? {}).filter(isOf)) {
        const draft = JSON.parse(storage().getItem(key));
        const isIn = draft.late.every(({ place, value }) => field(place)?.value === value);
        if (draft.text === saved && isIn) storage().removeItem(key);
        else found.push({ key, ...draft });
    }
    const newest = found.sort((a, b) => b.at - a.at)[0];
    return !newest ? null : {
        key: newest.key,
        stamp: newest.stamp,
        saved: newest.stamp === stamp ? saved : newest.saved,
        text: newest.text,
        from: since(new Date(newest.at)),
        late: newest.late,
    };
}

/** Forgets a draft that was taken up or given up. */
export function forget(key) {
    storage()?.removeItem(key);
}

/** Types once more what the program had not heard of: into the fields as they stand now. */
export function retype(late) {
    type(late, false);
}

function type(late, evenSame) {
    for (const { place, value } of late) {
        const one = field(place);
        if (one && (evenSame || one.value !== value)) {
            one.value = value;
            one.dispatchEvent(new Event("input", { bubbles: true }));
            one.dispatchEvent(new Event("change", { bubbles: true }));
        }
    }
}

const two = (number) => String(number).padStart(2, "0");

function since(then) {
    const time = `${two(then.getHours())}:${two(then.getMinutes())}`;
    return then.toDateString() === new Date().toDateString() ? time
        : `${then.getFullYear()}-${two(then.getMonth() + 1)}-${two(then.getDate())}, ${time}`;
}
