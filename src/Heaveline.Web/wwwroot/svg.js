// Elements of a drawing, and how wide words are in it.

const space = "http://www.w3.org/2000/svg";
const face = "'Heaveline Sans', system-ui, sans-serif";

/** A new element, put into its parent. */
export function put(parent, name, attributes = {}, words = null) {
    const made = document.createElementNS(space, name);
    for (const [key, value] of Object.entries(attributes)) if (value !== null && value !== undefined) made.setAttribute(key, value);
    if (words !== null) made.textContent = words;
    parent.append(made);
    return made;
}

/** Text whose letters keep a little room of their own, so that no line strikes them through. */
export function say(parent, words, x, y, classes = "", anchor = "start") {
    return put(parent, "text", { x: round(x), y: round(y), class: classes || null, "text-anchor": anchor === "start" ? null : anchor }, words);
}

/** A path through places, lifted where one is not finite. */
export function way(xs, ys, closed = false) {
    let d = "", down = false;
    for (let i = 0; i < xs.length; i++) {
        if (!Number.isFinite(xs[i]) || !Number.isFinite(ys[i])) { down = false; continue; }
        d += `${down ? "L" : "M"}${round(xs[i])} ${round(ys[i])}`;
        down = true;
    }
    return closed && d ? d + "Z" : d;
}

export const round = value => Math.round(10 * value) / 10;

/** How wide words are, pixels. */
export function wide(words, size = 13, weight = "") {
    const pen = wide.pen ??= document.createElement("canvas").getContext("2d");
    pen.font = `${weight} ${size}px ${face}`;
    return pen.measureText(words).width;
}

/** The faces that words are measured in, once they are here. */
export const faces = () => Promise.all([document.fonts.load(`13px ${face}`), document.fonts.load(`bold 13px ${face}`)]);
