// A drive as a phone's browser records it: samples in memory, kept part by part in the browser's own store, and written as one text of columns.

const store = "heaveline-phone";

/** Columns of a sample of motion: instant (s), acceleration with gravity, without, turn rate; NaN where the device gives none. */
export const width = 10;

/** Opens the browser's store; null where it gives none. */
export function open() {
    return new Promise((done) => {
        let asked;
        try {
            asked = indexedDB.open(store, 1);
        } catch {
            done(null); // Some browsers throw where storage is switched off.
            return;
        }
        asked.onupgradeneeded = () => {
            asked.result.createObjectStore("drives", { keyPath: "id" });
            asked.result.createObjectStore("parts", { keyPath: ["drive", "part"] });
        };
        asked.onsuccess = () => done(asked.result);
        asked.onerror = asked.onblocked = () => done(null);
    });
}

function asked(request) {
    return new Promise((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
    });
}

const partsOf = (id) => IDBKeyRange.bound([id, 0], [id, Infinity]);

/** The drives that are kept, the oldest first. */
export const drives = (db) => asked(db.transaction("drives").objectStore("drives").getAll());

/** Keeps a drive's head: its name, when it began, what the browser calls itself. */
export const keep = (db, drive) => asked(db.transaction("drives", "readwrite").objectStore("drives").put(drive));

/**
 * Keeps one more part of a drive: samples of motion, and fixes: instant (s), speed (m/s), and unless its owner says no latitude, longitude (°) and
 * accuracy (m).
 */
export const keepPart = (db, part) => asked(db.transaction("parts", "readwrite").objectStore("parts").put(part));

/** All parts of a drive in order. */
export const parts = (db, id) => asked(db.transaction("parts").objectStore("parts").getAll(partsOf(id)));

/** Lets go of a drive: it has arrived, or its owner wants it no more. */
export function drop(db, id) {
    const change = db.transaction(["drives", "parts"], "readwrite");
    change.objectStore("drives").delete(id);
    return asked(change.objectStore("parts").delete(partsOf(id)));
}

/**
 * A drive as a text: a line for every sample of motion and every fix, each with its own instant, in the order of the instants.
 * Returns null where nothing was recorded.
 */
export function text(drive, kept) {
    const motion = kept.flatMap((part) => rows(part.motion));
    const fixes = kept.flatMap((part) => part.fixes).filter((fix) => fix.slice(1).some(Number.isFinite));
    if (motion.length < 2) {
        return null;
    }
    const given = (from) => motion.some((row) => Number.isFinite(row[from]));
    const [force, free, turn] = [given(1), !given(1) && given(4), given(7)];
    const has = (from) => fixes.some((fix) => Number.isFinite(fix[from]));
    const fixNames = [...(has(1) ? ["speed (m/s)"] : []), ...(has(2) ? ["latitude (°)", "longitude (°)", "accuracy (m)"] : [])];
    // Digits of a hundredth of a metre, and of as much of a degree.
    const fixCells = (fix) => [...(has(1) ? [number(fix[1], 3)] : []), ...(has(2) ? [number(fix[2], 7), number(fix[3], 7), number(fix[4], 1)] : [])];
    const names = ["time (s)", ...(force ? axes("acceleration", "m/s²") : free ? axes("linear acceleration", "m/s²") : []),
        ...(turn ? axes("rotation rate", "°/s") : []), ...fixNames];
    const columns = [...(force ? [1, 2, 3] : free ? [4, 5, 6] : []), ...(turn ? [7, 8, 9] : [])];
    const blank = columns.map(() => "");
    const lines = [
        ...motion.map((row) => [row[0], [...columns.map((k) => number(row[k], 5)), ...fixNames.map(() => "")]]),
        ...fixes.map((fix) => [fix[0], [...blank, ...fixCells(fix)]]),
    ].sort((a, b) => a[0] - b[0]);
    const first = lines[0][0];
    return [
        `Recorded by a browser on ${new Date(drive.begun).toISOString()}`,
        names.join(","),
        ...lines.map(([at, cells]) => `${(at - first).toFixed(5)},${cells.join(",")}`),
        "",
    ].join("\n");
}

/** A name for the file of a drive: when it began, to the second. */
export const fileName = (drive) => `phone-${new Date(drive.begun).toISOString().slice(0, 19).replace(/[-:]/g, "").replace("T", "-")}.csv`;

const axes = (name, unit) => ["x", "y", "z"].map((axis) => `${name} ${axis} (${unit})`);

const number = (value, digits) => Number.isFinite(value) ? String(Number(value.toFixed(digits))) : "";

function rows(motion) {
    return Array.from({ length: motion.length / width }, (_, k) => motion.subarray(k * width, (k + 1) * width));
}
