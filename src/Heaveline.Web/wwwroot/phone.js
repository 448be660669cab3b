// Records a drive with the phone's own sensors. Samples bear the instants that the browser gives them, on one clock; what is recorded is kept in the
// browser every two seconds and sent when the program can be reached. Where it was driven is kept unless its owner says no; then of the position
// nothing but its speed is.

import * as log from "./phonelog.js";

const page = document.getElementById("phone");
const part = (name) => document.getElementById(`phone-${name}`);
const flushEvery = 2000; // ms
const tryEvery = 15000; // ms
const longest = 3 * 3600; // s
const silence = 3; // s without a sample, after which something is said
const start = part("start"), stop = part("stop"), state = part("state");

let store = null;
let recording = null;
let sending = false;
const spare = new Map(); // parts that the browser would not keep, by the drive's id: they live as long as this page
const told = new Map(); // what came of sending a drive, by its id

begin();

async function begin() {
    start.addEventListener("click", () => record());
    stop.addEventListener("click", () => finish());
    window.addEventListener("online", () => send());
    document.addEventListener("visibilitychange", () => hidden());
    window.addEventListener("beforeunload", (event) => {
        if (recording) {
            event.preventDefault();
        }
    });
    store = await log.open();
    start.disabled = false;
    const why = unable();
    start.disabled = why !== null;
    say(why ?? "Ready. Nothing is recorded yet.");
    if (!store) {
        remark("store", "This browser keeps nothing for pages: what is recorded is lost when the page is closed before it has arrived.");
    }
    await show();
    setInterval(() => send(), tryEvery);
    await send();
}

function unable() {
    return !window.isSecureContext ? "This page is not encrypted, so the browser gives it no sensors. Open it by the https address of the program."
        : typeof DeviceMotionEvent === "undefined" ? "This browser gives pages no motion sensors. Use another one, or a logger."
        : null;
}

async function record() {
    start.disabled = true;
    clearRemarks();
    // Some phones ask their owner first, and only upon a press.
    if (typeof DeviceMotionEvent.requestPermission === "function") {
        const answer = await DeviceMotionEvent.requestPermission().catch(() => "denied");
        if (answer !== "granted") {
            say("The phone was not allowed to give its motion. Load the page again and allow it; without it there is nothing to record.");
            start.disabled = false;
            return;
        }
    }
    const begun = Date.now();
    recording = {
        drive: { id: `${begun}-${Math.floor(Math.random() * 1e9)}`, name: part("name").value.trim() || "A drive", begun, touched: begun, ended: false },
        from: performance.now() / 1000, motion: [], fixes: [], parts: 0, samples: 0, turns: 0, forces: 0, recent: [], values: [], last: null, speed: null,
        noSpeed: null, gap: null, isPlaced: part("place").checked,
    };
    await guarded(() => store && log.keep(store, recording.drive));
    window.addEventListener("devicemotion", motion);
    recording.watch = watch();
    recording.awake = await wake();
    recording.flushing = setInterval(() => flush(), flushEvery);
    recording.looking = setInterval(() => look(), 1000);
    part("gauges").hidden = false;
    part("place").disabled = true;
    stop.hidden = false;
    start.hidden = true;
    say("Recording. Stand still for five seconds, then drive.");
}

// One sample. The event's own instant is that of the measurement as near as the browser tells it.
function motion(event) {
    const r = recording;
    const at = event.timeStamp / 1000;
    const axis = (from, names) => names.map((name) => from?.[name] ?? NaN);
    const force = axis(event.accelerationIncludingGravity, ["x", "y", "z"]);
    const free = axis(event.acceleration, ["x", "y", "z"]);
    // In every browser alpha turns about x, beta about y, gamma about z [W3C, Device Orientation and Motion, rotation rate].
    const turn = axis(event.rotationRate, ["alpha", "beta", "gamma"]);
    if (!force.concat(free).some(Number.isFinite)) {
        return;
    }
    r.motion.push(at, ...force, ...free, ...turn);
    r.samples++;
    r.forces += Number.isFinite(force[0]) ? 1 : 0;
    r.turns += Number.isFinite(turn[0]) ? 1 : 0;
    if (r.last !== null && at - r.last > 0.5) {
        r.gap = [r.last - r.from, at - r.from];
    }
    r.last = at;
    r.recent.push(at);
    r.values.push([force.find(Number.isFinite) ?? free[0], turn[0]]);
    if (r.recent.length > 240) {
        r.recent.shift();
        r.values.shift();
    }
}

function watch() {
    const r = recording;
    if (!navigator.geolocation) {
        r.noSpeed = "This browser gives pages no position, so there is no speed";
        return null;
    }
    return navigator.geolocation.watchPosition(
        ({ coords, timestamp }) => {
            const speed = coords.speed;
            r.noSpeed = speed === null ? "The position comes without a speed; it does once the phone moves under open sky" : null;
            r.speed = speed ?? r.speed;
            const at = (timestamp - performance.timeOrigin) / 1000;
            // The first one given may be an old one.
            if (at > r.from && (speed !== null || r.isPlaced)) {
                r.fixes.push([at, speed ?? NaN, ...(r.isPlaced ? [coords.latitude, coords.longitude, coords.accuracy] : [])]);
            }
        },
        (refusal) => {
            r.noSpeed = refusal.code === refusal.PERMISSION_DENIED ? "The position was not allowed, so there is no speed"
                : "No satellites yet, so there is no speed";
        },
        { enableHighAccuracy: true, maximumAge: 0, timeout: 30000 });
}

async function wake() {
    try {
        return await navigator.wakeLock?.request("screen") ?? null;
    } catch {
        return null; // Refused on a weak battery: said below, where the page looks.
    }
}

// Once a second: what really comes, and what is missing.
function look() {
    const r = recording;
    const now = performance.now() / 1000;
    const passed = now - r.from;
    part("length").textContent = `${Math.floor(passed / 60)} min ${Math.floor(passed % 60)} s, ${r.samples} samples`;
    const rate = rateOf(r.recent, now);
    part("rate").textContent = rate === null ? "none" : `${rate.perSecond.toFixed(0)} a second, steps even to ${rate.jitter.toFixed(1)} ms`;
    const [force, turn] = [0, 1].map((k) => fineness(r.values.map((row) => row[k])));
    part("fine").textContent = [[force, "m/s²"], [turn, "°/s"]].filter(([step]) => step !== null)
        .map(([step, unit]) => `${Number(step.toPrecision(2))} ${unit}`).join(", ") || "–";
    part("turn").textContent = r.samples > 0 && r.turns > 0 ? "yes" : "none";
    part("speed").textContent = r.speed === null ? "none yet" : `${(3.6 * r.speed).toFixed(0)} km/h`;
    remark("motion", passed > silence && (r.last === null || now - r.last > silence)
        ? r.samples === 0 ? "No motion comes: this device has no sensor, or keeps it from pages." : "No motion comes any more: is another page in front?" : null);
    remark("rate", rate === null || rate.perSecond >= 45 ? null
        : rate.perSecond < 20 ? `${rate.perSecond.toFixed(0)} samples a second: body motion is just seen, nothing else.`
        : `${rate.perSecond.toFixed(0)} samples a second: bumps are seen, wheel hop and comfort are not.`);
    remark("turn", r.samples > 30 && r.turns === 0 ? "No turn rate: heave alone is seen; no pitch, and nothing of the car." : null);
    remark("gravity", r.samples > 30 && r.forces === 0 ? "Gravity is missing from the acceleration: up is not known, so the log will be refused." : null);
    remark("speed", r.noSpeed && passed > silence ? `${r.noSpeed}: bumps of one place are then told apart by hand.` : null);
    remark("awake", r.awake && !r.awake.released ? null
        : "The phone could not be asked to stay awake: switch off its automatic lock, or it stops its sensors.");
    remark("gap", r.gap ? `Nothing came from ${r.gap[0].toFixed(0)} to ${r.gap[1].toFixed(0)} s: that part is missing.` : null);
    if (passed > longest) {
        finish();
    }
}

function rateOf(instants, now) {
    const recent = instants.filter((at) => at > now - 4);
    if (recent.length < 3) {
        return null;
    }
    const steps = recent.slice(1).map((at, k) => at - recent[k]).sort((a, b) => a - b);
    const median = (sorted) => sorted[Math.floor(sorted.length / 2)];
    const off = steps.map((step) => Math.abs(step - median(steps))).sort((a, b) => a - b);
    return { perSecond: (recent.length - 1) / (recent.at(-1) - recent[0]), jitter: 1482.6 * median(off) };
}

// The smallest step between two values that came: browsers round what they give.
function fineness(values) {
    const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
    const steps = sorted.slice(1).map((value, k) => value - sorted[k]).filter((step) => step > 1e-6);
    return steps.length > 0 ? Math.min(...steps) : null;
}

async function hidden() {
    if (recording && document.visibilityState === "visible") {
        recording.awake = await wake();
    }
}

// Keeps what came since the last time.
async function flush() {
    const r = recording;
    const kept = { drive: r.drive.id, part: r.parts, motion: Float64Array.from(r.motion), fixes: r.fixes };
    if (kept.motion.length === 0 && kept.fixes.length === 0) {
        return;
    }
    r.motion = [];
    r.fixes = [];
    r.parts++;
    r.drive.touched = Date.now();
    if (!store || !await guarded(() => Promise.all([log.keepPart(store, kept), log.keep(store, r.drive)]))) {
        if (!spare.has(r.drive.id)) {
            spare.set(r.drive.id, { drive: r.drive, parts: [] });
        }
        spare.get(r.drive.id).parts.push(kept);
    }
}

async function finish() {
    const r = recording;
    window.removeEventListener("devicemotion", motion);
    clearInterval(r.flushing);
    clearInterval(r.looking);
    if (r.watch !== null) {
        navigator.geolocation.clearWatch(r.watch);
    }
    await r.awake?.release().catch(() => {});
    await flush();
    r.drive.ended = true;
    await guarded(() => store && log.keep(store, r.drive));
    recording = null;
    stop.hidden = true;
    start.hidden = false;
    start.disabled = false;
    part("place").disabled = false;
    part("gauges").hidden = true;
    say("Stopped.");
    await show();
    await send();
}

// What is kept: in the browser's store, and in this page where that failed.
async function kept() {
    const stored = store ? await log.drives(store) : [];
    const here = [...spare.values()].map((one) => one.drive).filter((drive) => !stored.some((s) => s.id === drive.id));
    // One that is not ended and was touched a moment ago is being recorded, here or in another tab.
    return [...stored, ...here].filter((drive) => drive.id !== recording?.drive.id && (drive.ended || Date.now() - drive.touched > 5 * flushEvery));
}

async function textOf(drive) {
    const stored = store ? await log.parts(store, drive.id) : [];
    return log.text(drive, [...stored, ...spare.get(drive.id)?.parts ?? []].sort((a, b) => a.part - b.part));
}

async function send() {
    if (sending) {
        return;
    }
    sending = true;
    try {
        for (const drive of await kept()) {
            await sendOne(drive);
        }
    } finally {
        sending = false;
        await show();
    }
}

async function sendOne(drive) {
    const body = await textOf(drive);
    if (body === null) {
        told.set(drive.id, "Nothing was recorded in it.");
        return;
    }
    const query = new URLSearchParams({ name: drive.name, file: log.fileName(drive) });
    let answer;
    try {
        answer = await fetch(`${page.dataset.door}?${query}`, {
            method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: new Blob([body]), redirect: "error",
        });
    } catch {
        told.set(drive.id, "The program cannot be reached. It is kept here and sent when it can.");
        return;
    }
    if (answer.status === 401) {
        told.set(drive.id, "The program has been started anew and asks for its code again: open the garage in another tab and type it.");
    } else if (!answer.ok) {
        told.set(drive.id, `Refused: ${await answer.text()}`);
    } else {
        const { drive: name } = await answer.json();
        if (store) {
            await log.drop(store, drive.id);
        }
        spare.delete(drive.id);
        arrived(drive, name);
    }
}

function arrived(drive, name) {
    const link = document.createElement("a");
    link.href = `${page.dataset.drive}${encodeURIComponent(name)}`;
    link.textContent = `${drive.name}: read it`;
    const line = document.createElement("li");
    line.append(link);
    part("arrived").append(line);
    part("sent").hidden = false;
    if (!recording) {
        say(`"${drive.name}" has arrived in the garage.`);
    }
}

async function show() {
    const all = await kept();
    part("kept").hidden = all.length === 0;
    part("drives").replaceChildren(...all.map((drive) => {
        const line = document.createElement("li");
        const words = document.createElement("p");
        words.textContent = `${drive.name}, ${new Date(drive.begun).toLocaleString()}${drive.ended ? "" : ", broken off"}. ${told.get(drive.id) ?? ""}`;
        line.append(words, button("Save it as a file", () => save(drive)), button("Throw it away", () => away(drive)));
        return line;
    }));
}

function button(words, act) {
    const one = document.createElement("button");
    one.type = "button";
    one.textContent = words;
    one.addEventListener("click", act);
    return one;
}

async function save(drive) {
    const body = await textOf(drive);
    if (body === null) {
        return;
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([body], { type: "text/csv" }));
    link.download = log.fileName(drive);
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

async function away(drive) {
    if (window.confirm(`Throw "${drive.name}" away? It is in no garage yet.`)) {
        if (store) {
            await log.drop(store, drive.id);
        }
        spare.delete(drive.id);
        await show();
    }
}

// The browser's store may refuse at any time: full, or switched off. What is recorded then stays in the page.
async function guarded(act) {
    try {
        await act();
        return true;
    } catch (refusal) {
        if (!(refusal instanceof DOMException)) {
            throw refusal;
        }
        remark("store", "This browser keeps no more: what is recorded from here on is lost when the page is closed before it has arrived.");
        return false;
    }
}

function say(words) {
    state.textContent = words;
}

function clearRemarks() {
    part("remarks").replaceChildren();
}

// One sentence a subject, there or not; a screen reader hears it when it comes.
function remark(about, words) {
    const list = part("remarks");
    let line = list.querySelector(`[data-about="${about}"]`);
    if (words === null) {
        line?.remove();
    } else if (!line) {
        line = document.createElement("li");
        line.dataset.about = about;
        line.className = "caution";
        list.append(line);
    }
    if (words !== null && line.textContent !== words) {
        line.textContent = words;
    }
}
