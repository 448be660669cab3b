// Marks on one frame of a film: both hubs and two corners of a box round the body, or a lamp, in pixels of the film, by pointer with a loupe and by
// keys.

const states = new WeakMap();
const near = 16;
const loupeZoom = 8;
const nearest = 8;

/** Listens to the place of the marks; tells the page's object the frame's time and the marks whenever they change. */
export function attach(place, page) {
    if (!place) {
        // Another film is shown already.
        return;
    }
    const [frame, picture, drawing, loupe] = [".frame", "img", "svg", "canvas"].map((one) => place.querySelector(one));
    const range = place.querySelector("input[type=range]");
    const order = place.dataset.order.split(",");
    const state = {
        order, place, page, frame, picture, drawing, loupe, range,
        size: [Number(place.dataset.width), Number(place.dataset.height)],
        // What is marked already lies on the frame that is shown first, wherever a hand has put the slider meanwhile: early.js puts it there again.
        at: Number(range.defaultValue), points: {}, past: [], left: new Map(), hover: null, dragged: null, asked: 0, zoom: 1, from: [0, 0],
    };
    states.set(place, state);
    const begun = place.dataset.marks ? place.dataset.marks.split(",").map(Number) : [];
    order.forEach((mark, k) => {
        if (begun.length === 2 * order.length) {
            state.points[mark] = [begun[2 * k], begun[2 * k + 1]];
        }
    });
    if (begun.length === 8) {
        place.querySelector("#mark-goes").value = begun[0] > begun[2] ? "right" : "left";
    }
    range.addEventListener("change", () => show(state, Number(range.value), true));
    range.addEventListener("input", () => time(state, Number(range.value)));
    for (const button of place.querySelectorAll("[data-by]")) {
        button.addEventListener("click", () => show(state, state.at + Number(button.dataset.by) * Number(range.step), true));
    }
    for (const button of place.querySelectorAll("[data-zoom]")) {
        button.addEventListener("click", () => zoomed(state, Number(button.dataset.zoom)));
    }
    for (const button of place.querySelectorAll("[data-nudge]")) {
        button.addEventListener("click", (event) => nudge(state, button.dataset.nudge.split(",").map(Number), event.shiftKey));
    }
    place.querySelector("#mark-undo").addEventListener("click", () => undo(state));
    for (const radio of radios(state)) {
        radio.addEventListener("change", () => {
            follow(state);
            draw(state);
        });
    }
    frame.addEventListener("keydown", (event) => key(state, event));
    frame.addEventListener("focus", () => draw(state));
    frame.addEventListener("pointerdown", (event) => press(state, event));
    frame.addEventListener("pointermove", (event) => move(state, event));
    frame.addEventListener("pointerup", (event) => release(state, event));
    frame.addEventListener("pointercancel", (event) => release(state, event));
    frame.addEventListener("pointerleave", () => {
        state.hover = null;
        draw(state);
    });
    heaveline.heard(place);
    show(state, state.at, false);
}

/** Sets both hubs where they were found, and a box over them where there is none; the reader corrects. */
export function suggest(place, [leftX, leftY, rightX, rightY]) {
    const state = states.get(place);
    if (!state) {
        return;
    }
    const goesRight = place.querySelector("#mark-goes").value === "right";
    keep(state);
    state.points.front = goesRight ? [rightX, rightY] : [leftX, leftY];
    state.points.rear = goesRight ? [leftX, leftY] : [rightX, rightY];
    // So near that the car fills half of the frame.
    closer(state, nearestPower(state.size[0] / (3 * (rightX - leftX))), [0.5 * (leftX + rightX), 0.5 * (leftY + rightY)]);
    if (!state.points.from || !state.points.to) {
        const long = rightX - leftX;
        const level = 0.5 * (leftY + rightY);
        state.points.from = inside(state, [leftX, level - 0.36 * long]);
        state.points.to = inside(state, [rightX, level - 0.12 * long]);
    }
    tell(state);
}

const nearestPower = (wanted) => Math.min(nearest, Math.max(1, 2 ** Math.floor(Math.log2(Math.max(1, wanted)))));

// Shows a part of the frame, as large as the whole one is; about a point, as far as the picture reaches.
function closer(state, zoom, about) {
    state.zoom = zoom;
    state.from = about.map((one, k) => {
        const part = state.size[k] / zoom;
        return Math.min(state.size[k] - part, Math.max(0, one - 0.5 * part));
    });
}

// About what is looked at: the pointer, else the chosen mark, else the middle of what is shown.
function zoomed(state, by) {
    const middle = state.from.map((one, k) => one + 0.5 * state.size[k] / state.zoom);
    closer(state, Math.min(nearest, Math.max(1, state.zoom * by)), state.hover ?? state.points[chosen(state)] ?? middle);
    draw(state);
}

const isSeen = ({ from, size, zoom }, point) => point.every((one, k) => one >= from[k] && one <= from[k] + size[k] / zoom);

const moment = (at) => at.toFixed(4);

async function show(state, wanted, clears) {
    const at = Math.min(Number(state.range.max), Math.max(0, wanted));
    if (clears && at !== state.at) {
        // Marks belong to the frame on which they were set, and stand there again for whoever comes back to it.
        keep(state);
        state.left.set(moment(state.at), structuredClone(state.points));
        state.points = structuredClone(state.left.get(moment(at)) ?? {});
        choose(state, state.order.find((mark) => !state.points[mark]) ?? state.order[0]);
    }
    state.at = at;
    state.range.value = String(at);
    time(state, at);
    const asked = ++state.asked;
    state.frame.setAttribute("aria-busy", "true");
    let words = "";
    try {
        const answer = await fetch(`${state.place.dataset.frame}&at=${moment(at)}`);
        if (asked !== state.asked) {
            return;
        }
        if (answer.ok) {
            URL.revokeObjectURL(state.picture.src);
            state.picture.src = URL.createObjectURL(await answer.blob());
            await state.picture.decode();
        } else {
            words = answer.status === 401 ? "The program asks for its code again; load this page anew." : await answer.text();
        }
    } catch {
        words = "The frame did not arrive: the program cannot be reached. Move to another frame and back.";
    }
    if (asked === state.asked) {
        state.frame.removeAttribute("aria-busy");
        await tell(state, words);
    }
}

function time(state, at) {
    state.place.querySelector("[data-time]").textContent = `${at.toFixed(3)} s`;
}

const called = (state, mark) => radios(state).find((radio) => radio.value === mark).dataset.label;

const radios = (state) => [...state.place.querySelectorAll("input[type=radio]")];

const chosen = (state) => radios(state).find((radio) => radio.checked).value;

function choose(state, mark) {
    for (const radio of radios(state)) {
        radio.checked = radio.value === mark;
    }
}

const inside = ({ size }, point) => point.map((one, k) => Math.min(size[k] - 1, Math.max(0, Math.round(10 * one) / 10)));

function keep(state) {
    state.past.push({ at: state.at, points: structuredClone(state.points), mark: chosen(state) });
}

function undo(state) {
    const before = state.past.pop();
    if (!before) {
        return;
    }
    state.points = before.points;
    choose(state, before.mark);
    if (before.at === state.at) {
        tell(state);
    } else {
        show(state, before.at, false);
    }
}

function next(state) {
    const { order, points } = state;
    const open = order.find((mark) => !points[mark]);
    choose(state, open ?? order[(order.indexOf(chosen(state)) + 1) % order.length]);
}

// A mark that is not there yet begins in the middle.
function nudge(state, by, isLarge) {
    const mark = chosen(state);
    const from = state.points[mark] ?? state.size.map((one) => 0.5 * one);
    keep(state);
    state.points[mark] = inside(state, from.map((one, k) => one + (isLarge ? 10 : 1) * by[k]));
    state.hover = null;
    follow(state);
    tell(state);
}

// The chosen mark stays in sight.
function follow(state) {
    const point = state.points[chosen(state)];
    if (point && !isSeen(state, point)) {
        closer(state, state.zoom, point);
    }
}

function key(state, event) {
    const by = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (by && !event.ctrlKey && !event.metaKey && !event.altKey) {
        nudge(state, by, event.shiftKey);
    } else if (event.key === "z" && (event.ctrlKey || event.metaKey)) {
        undo(state);
    } else if (event.ctrlKey || event.metaKey || event.altKey) {
        // The browser's own: it shows the page nearer, or another page.
        return;
    } else if (event.key === "+" || event.key === "-") {
        zoomed(state, event.key === "+" ? 2 : 0.5);
    } else if (event.key === "Enter") {
        next(state);
        follow(state);
        tell(state);
    } else if (event.key === "PageUp" || event.key === "PageDown") {
        show(state, state.at + (event.key === "PageUp" ? -1 : 1) * Number(state.range.step), true);
    } else {
        return;
    }
    event.preventDefault();
}

function pointed(state, event) {
    const place = state.frame.getBoundingClientRect();
    return inside(state, [
        (event.clientX - place.left) / place.width * state.size[0] / state.zoom + state.from[0] - 0.5,
        (event.clientY - place.top) / place.height * state.size[1] / state.zoom + state.from[1] - 0.5,
    ]);
}

function press(state, event) {
    if (event.button !== 0) {
        return;
    }
    event.preventDefault();
    state.frame.focus({ preventScroll: true });
    state.frame.setPointerCapture(event.pointerId);
    const at = pointed(state, event);
    const reach = near / state.frame.getBoundingClientRect().width * state.size[0] / state.zoom;
    const met = state.order.find((mark) => state.points[mark] && Math.hypot(...state.points[mark].map((one, k) => one - at[k])) < reach);
    keep(state);
    if (met && state.points[chosen(state)]) {
        choose(state, met);
    }
    const mark = chosen(state);
    const there = state.points[mark];
    state.dragged = { mark, isNew: !there, off: there && met === mark ? there.map((one, k) => one - at[k]) : [0, 0] };
    move(state, event);
}

function move(state, event) {
    state.hover = pointed(state, event);
    if (state.dragged) {
        state.points[state.dragged.mark] = inside(state, state.hover.map((one, k) => one + state.dragged.off[k]));
        state.hover = null;
    }
    draw(state);
}

function release(state) {
    if (!state.dragged) {
        return;
    }
    const { isNew } = state.dragged;
    state.dragged = null;
    if (isNew && state.order.some((mark) => !state.points[mark])) {
        next(state);
    }
    tell(state);
}

async function tell(state, words = "") {
    draw(state);
    const { order, points } = state;
    const isWhole = order.every((mark) => points[mark]);
    const digits = (point) => point.map((one) => one.toFixed(1)).join(", ");
    const said = order.filter((mark) => points[mark]).map((mark) => `${called(state, mark)} at ${digits(points[mark])}`);
    const missing = isWhole ? "" : ` Next: ${called(state, chosen(state))}.`;
    state.place.querySelector("#mark-said").textContent = words || `${said.length ? said.join("; ") : "Nothing is marked yet"}.${missing}`;
    try {
        await state.page.invokeMethodAsync("Said", state.at, isWhole && !words ? order.flatMap((mark) => points[mark]) : null);
    } catch (unheard) {
        // Nobody listens any more where another film is shown.
        if (state.place.isConnected) {
            throw unheard;
        }
    }
}

// Pixels count from the middle of the first one; a drawing counts from its corner.
function draw(state) {
    const { zoom, from, size } = state;
    state.picture.style.transform = `translate(${from.map((one, k) => `${-100 * zoom * one / size[k]}%`).join(", ")}) scale(${zoom})`;
    state.drawing.setAttribute("viewBox", [...from, ...size.map((one) => one / zoom)].join(" "));
    state.place.querySelector("[data-zoom='0.5']").disabled = zoom === 1;
    state.place.querySelector("[data-zoom='2']").disabled = zoom === nearest;
    const large = size[0] / 90 / zoom;
    const mark = chosen(state);
    const shapes = [];
    const put = (name, kind, attributes) => {
        for (const layer of ["under", "over"]) {
            const shape = document.createElementNS("http://www.w3.org/2000/svg", name);
            shape.setAttribute("class", `${kind} ${layer}${mark === kind ? " chosen" : ""}`);
            for (const [one, value] of Object.entries(attributes)) {
                shape.setAttribute(one, value);
            }
            shapes.push(shape);
        }
    };
    const at = Object.fromEntries(Object.entries(state.points).filter(([, p]) => p).map(([one, [x, y]]) => [one, [x + 0.5, y + 0.5]]));
    const cross = ([x, y], size) => `M${x - size},${y}H${x + size}M${x},${y - size}V${y + size}`;
    if (at.from && at.to) {
        put("rect", "box", {
            x: Math.min(at.from[0], at.to[0]), y: Math.min(at.from[1], at.to[1]),
            width: Math.abs(at.from[0] - at.to[0]), height: Math.abs(at.from[1] - at.to[1]),
        });
    }
    for (const one of ["from", "to"].filter((corner) => at[corner])) {
        put("path", one, { d: cross(at[one], 0.5 * large) });
    }
    if (at.lamp) {
        put("circle", "lamp", { cx: at.lamp[0], cy: at.lamp[1], r: 1.5 * large });
    }
    if (at.front) {
        put("circle", "front", { cx: at.front[0], cy: at.front[1], r: large });
        put("path", "front", { d: cross(at.front, 0.4 * large) });
    }
    if (at.rear) {
        put("rect", "rear", { x: at.rear[0] - large, y: at.rear[1] - large, width: 2 * large, height: 2 * large });
        put("path", "rear", { d: cross(at.rear, 0.4 * large) });
    }
    state.drawing.replaceChildren(...shapes);
    look(state, state.hover ?? state.points[mark] ?? null);
}

// What lies under the pointer or the chosen mark, so large that its pixels are seen; in the corner farther away.
function look({ loupe, picture, size, from, zoom }, at) {
    const isShown = at !== null && picture.complete && picture.naturalWidth > 0;
    loupe.hidden = !isShown;
    if (!isShown) {
        return;
    }
    loupe.classList.toggle("left", at[0] > from[0] + 0.5 * size[0] / zoom);
    const pen = loupe.getContext("2d");
    const part = loupe.width / loupeZoom;
    pen.imageSmoothingEnabled = false;
    pen.fillStyle = "#000";
    pen.fillRect(0, 0, loupe.width, loupe.height);
    pen.drawImage(picture, at[0] + 0.5 - 0.5 * part, at[1] + 0.5 - 0.5 * part, part, part, 0, 0, loupe.width, loupe.height);
    const middle = 0.5 * loupe.width;
    for (const [colour, width] of [["#000", 3], ["#fff", 1]]) {
        pen.strokeStyle = colour;
        pen.lineWidth = width;
        pen.beginPath();
        pen.moveTo(middle, 0);
        pen.lineTo(middle, loupe.height);
        pen.moveTo(0, middle);
        pen.lineTo(loupe.width, middle);
        pen.stroke();
    }
}
