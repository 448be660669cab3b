// Charts of a page, drawn by plotly.js: turns a sheet (structure and numbers, see ChartSheet) into what plotly takes.
// The reader's colours come from the style sheet, so that light and dark need no second drawing.

import { lines } from "./lines.js";
import { extremes, mapTraces, mapRoom, nameLines, nameRoom, spreadNames } from "./map.js";

const address = { basic: "../Plotly.Blazor/plotly-basic-3.7.0.min.js", full: "../Plotly.Blazor/plotly-3.7.0.min.js" };
const shapes = { Dot: "circle", Ring: "circle-open", Square: "square", Diamond: "diamond", Cross: "x-thin-open", Triangle: "triangle-up" };
const dashes = { Solid: "solid", Dashed: "dash", Dotted: "dot", DashDot: "dashdot" };
const paperWidth = 680; // pixels: A4 and letter within their usual margins, at 96 to the inch
const millimetre = 4.2; // pixels for a millimetre of paper: judged by eye
let loading = null;
let loadedFull = false;

// The bundle with the maps would bring a style sheet of its own for geographic tiles, which no page shows and the policy forbids:
// it looks for this name first.
const tileStyles = "ce8d464691048653ffe3a57c6c18ab566e8366f186677868cf724621a857b4fe";

// plotly.js is a classic script: it stays for the page's life. The small bundle has no maps.
export function load(full = false) {
    if (loading && (loadedFull || !full)) return loading;
    loadedFull = full;
    loading = new Promise((done, failed) => {
        if (full && !document.getElementById(tileStyles)) document.head.append(Object.assign(document.createElement("meta"), { id: tileStyles }));
        const script = document.createElement("script");
        script.src = new URL(full ? address.full : address.basic, import.meta.url);
        script.onload = () => done(window.Plotly);
        script.onerror = () => failed(new Error("The charts' script could not be loaded."));
        document.head.append(script);
    });
    return loading;
}

export function colours(element = document.documentElement) {
    const style = getComputedStyle(element);
    const get = name => style.getPropertyValue("--" + name).trim();
    return {
        paper: get("paper"), text: get("text"), quiet: get("quiet"), line: get("line"), edge: get("edge"),
        ground: get("ground"), groundDeep: get("ground-deep"),
        mapMiddle: get("map-middle"), mapCool: get("map-cool"), mapWarm: get("map-warm"), mapLine: get("map-line"), mapHatch: get("map-hatch"),
        First: get("first"), Second: get("second-mark"), Third: get("third"), Fourth: get("fourth"), Fifth: get("fifth"), former: get("former"),
    };
}

const faded = (hex, share) => {
    const n = parseInt(hex.slice(1), 16);
    return `rgba(${n >> 16},${(n >> 8) & 255},${n & 255},${share})`;
};

const heading = axis => axis.unit ? `${axis.label} (${axis.unit})` : axis.label;

function axisOf(axis, ink) {
    const range = axis.from != null && axis.to != null ? (axis.log ? [Math.log10(axis.from), Math.log10(axis.to)] : [axis.from, axis.to]) : undefined;
    // An end that is not given is found from the curves, the other stays.
    const ends = range === undefined && !axis.log ? { minallowed: axis.from ?? undefined, maxallowed: axis.to ?? undefined } : undefined;
    return {
        type: axis.log ? "log" : "linear", range, autorange: range === undefined, autorangeoptions: ends,
        automargin: true, fixedrange: true, zeroline: !axis.log, zerolinecolor: ink.edge,
        gridcolor: ink.line, linecolor: ink.edge, tickcolor: ink.edge, ticks: "outside", ticklen: 4, tickfont: { color: ink.text, size: 12 },
    };
}

// A heading in as many lines as the width asks for.
function broken(text, most) {
    const pen = broken.pen ??= document.createElement("canvas").getContext("2d");
    pen.font = "12.5px 'Heaveline Sans', system-ui, sans-serif";
    return lines(text, most, words => pen.measureText(words).width).join("<br>");
}

function title(text, ink, axis, most) {
    return {
        text: broken(text, most), align: "left", x: 0, xanchor: "left", y: 1, yanchor: "bottom", xref: axis + " domain", yref: axis.replace("x", "y") + " domain",
        yshift: 2, showarrow: false, font: { size: 12.5, color: ink.text },
    };
}

function bandShape(band, ink, x, y) {
    return {
        type: "rect", layer: "below", line: { width: 0 }, fillcolor: band.shade === "Grey" ? ink.groundDeep : ink.ground,
        xref: x, yref: y, x0: band.from, x1: band.to, y0: 0, y1: 1,
    };
}

// What plotly needs for a sheet: data and layout. Returned apart from the drawing so that a page can change numbers only.
export function compose(sheet, numbers, ink, width) {
    const data = [], shapeList = [], notes = [], layout = {}, maps = sheet.panels.filter(panel => panel.kind === "map");
    let at = 0;
    const take = n => numbers.subarray(at, at += n);
    const roomOf = panel => panel.kind === "map" ? mapRoom : 11;
    const total = sheet.panels.reduce((sum, panel) => sum + panel.height + roomOf(panel), 0);
    const height = Math.round(total * millimetre * Math.min(1, Math.max(.8, width / 700)) + 56);
    let top = 1;
    const lastShared = sheet.panels.findLastIndex(panel => panel.shared);
    sheet.panels.forEach((panel, i) => {
        const id = i === 0 ? "" : String(i + 1), x = "x" + id, y = "y" + id;
        const share = panel.height / total, room = roomOf(panel) / total;
        const to = top - room, from = Math.max(0, to - share);
        top = from;
        layout["xaxis" + id] = {
            ...axisOf(panel.x, ink), anchor: y,
            matches: panel.shared && i > 0 ? "x" : undefined, showticklabels: !panel.shared || i === lastShared,
        };
        layout["yaxis" + id] = { ...axisOf(panel.y, ink), anchor: x, domain: [from, to], nticks: 6 };
        if (!panel.shared || i === lastShared) {
            layout["xaxis" + id].title = { text: heading(panel.x), font: { size: 12.5, color: ink.text }, standoff: 6 };
        }
        notes.push(title(panel.title ? `${panel.title}: ${heading(panel.y)}` : heading(panel.y), ink, x, width - 60));
        const bands = [...(panel.shared ? sheet.bands : []), ...(panel.bands ?? [])];
        for (const band of bands) shapeList.push(bandShape(band, ink, x, y + " domain"));
        if (panel.kind === "map") {
            const columns = take(panel.columns), rows = take(panel.rows), flat = take(panel.columns * panel.rows);
            const size = { width: Math.max(100, width - 60 - nameRoom(maps, width < 560)), height: share * (height - 56) };
            const map = mapTraces(panel, columns, rows, flat, ink, { x, y }, size, heading);
            data.push(...map.data);
            shapeList.push(...map.shapes);
            notes.push(...map.notes);
            Object.assign(layout["xaxis" + id], { range: [columns[0], columns.at(-1)], autorange: false });
            Object.assign(layout["yaxis" + id], { range: [rows[0], rows.at(-1)], autorange: false });
            panel.ys = rows;
        }
        for (const ribbon of panel.ribbons ?? []) {
            const xs = take(ribbon.n), lows = take(ribbon.n), highs = take(ribbon.n);
            data.push({
                type: "scatter", mode: "lines", x: xs, y: lows, xaxis: x, yaxis: y, line: { width: 0 }, hoverinfo: "skip", showlegend: false,
            });
            data.push({
                type: "scatter", mode: "lines", x: xs, y: highs, xaxis: x, yaxis: y, line: { width: 0 },
                fill: "tonexty", fillcolor: faded(ink[ribbon.ink], .22), hoverinfo: "skip", showlegend: false,
            });
        }
        for (const trace of panel.traces) {
            const xs = take(trace.n), ys = take(trace.n);
            trace.ends = extremes(ys);
            trace.sides = extremes(xs);
            data.push({
                type: "scatter", mode: "lines", x: xs, y: ys, xaxis: x, yaxis: y, name: trace.name || panel.y.label,
                line: { color: ink[trace.ink], width: 1.6 * trace.width, dash: dashes[trace.dash], simplify: true },
                // A place of a map tells its own values, under a curve too.
                ...(panel.kind === "map" ? { hoverinfo: "skip" } : { hovertemplate: `%{y:.3g} ${panel.y.unit}` }),
            });
            if (trace.name) {
                let last = ys.length - 1;
                while (last > 0 && Number.isNaN(ys[last])) last--;
                notes.push({
                    text: nameLines(trace.name, width < 560).join("<br>"), align: "left",
                    x: 1, xref: x + " domain", xanchor: "left", xshift: 6,
                    y: noted(panel.y, ys[last]), yref: y, yanchor: "middle",
                    showarrow: false, font: { size: 12, color: ink[trace.ink] }, captureevents: false,
                });
            }
        }
        if (panel.y.log) Object.assign(layout["yaxis" + id], powers(...reach(panel)));
        const sides = panel.traces.flatMap(trace => trace.sides ?? []);
        if (panel.x.log) {
            Object.assign(layout["xaxis" + id], powers(Math.log10(panel.x.from ?? Math.min(...sides)), Math.log10(panel.x.to ?? Math.max(...sides))));
        }
        spreadNames(notes, y, panel.ys ?? reach(panel), share * (height - 56));
        for (const limit of panel.limits ?? []) {
            shapeList.push(limit.upright
                ? {
                    type: "line", xref: x, yref: y + " domain", x0: limit.at, x1: limit.at, y0: 0, y1: 1,
                    line: { color: ink.quiet, width: 1, dash: "dot" },
                }
                : {
                    type: "line", xref: x + " domain", yref: y, x0: 0, x1: 1, y0: limit.at, y1: limit.at,
                    line: { color: ink.quiet, width: 1, dash: "dot" },
                });
            notes.push(limit.upright
                ? {
                    text: limit.label, xref: x, yref: y + " domain", x: noted(panel.x, limit.at), y: 1, xanchor: "left", yanchor: "top",
                    showarrow: false, font: { size: 11, color: ink.quiet },
                }
                : {
                    text: limit.label, xref: x + " domain", yref: y, x: 1, y: noted(panel.y, limit.at), xanchor: "right", yanchor: "bottom",
                    showarrow: false, font: { size: 11, color: ink.quiet },
                });
        }
        if ((panel.marks ?? []).length > 0) {
            data.push({
                type: "scatter", mode: "markers+text", x: panel.marks.map(mark => mark.x), y: panel.marks.map(mark => mark.y),
                text: panel.marks.map(mark => mark.label), xaxis: x, yaxis: y,
                // Over a map, marks stand on the lines of the loads: their words go below, away from those lines.
                textposition: panel.kind === "map" ? "bottom left" : "top center",
                textfont: { size: 11.5, color: ink.text },
                marker: {
                    size: 8, color: panel.marks.map(mark => ink[mark.ink]), symbol: panel.marks.map(mark => shapes[mark.symbol] ?? "circle"),
                    line: { width: 1.5, color: panel.marks.map(mark => ink[mark.ink]) },
                },
                hoverinfo: "skip", cliponaxis: false,
            });
        }
        for (const note of panel.notes ?? []) {
            notes.push({
                text: note.text, x: noted(panel.x, note.x), y: noted(panel.y, note.y), xref: x, yref: y, showarrow: false, xanchor: "left",
                font: { size: 11, color: ink.quiet },
            });
        }
    });
    const first = sheet.panels[0]?.shared;
    for (const band of first ? sheet.bands : []) if (band.label) {
        notes.push({
            text: band.label, xref: "x", yref: "paper", x: (band.from + band.to) / 2, y: 1, yanchor: "bottom",
            showarrow: false, yshift: 4, font: { size: 11.5, color: ink.quiet },
        });
    }
    return {
        data,
        layout: {
            ...layout, height, shapes: shapeList, annotations: notes, showlegend: false,
            hovermode: maps.length > 0 ? "closest" : "x unified", dragmode: false, autosize: true,
            paper_bgcolor: "rgba(0,0,0,0)", plot_bgcolor: "rgba(0,0,0,0)",
            font: { family: "Heaveline Sans, system-ui, sans-serif", color: ink.text, size: 12 },
            hoverlabel: { bgcolor: ink.paper, bordercolor: ink.edge, font: { color: ink.text } },
            margin: {
                l: 8,
                r: maps.length > 0
                    ? nameRoom(maps, width < 560)
                    : width < 560 ? Math.max(58, nameRoom(sheet.panels, true)) : Math.min(150, Math.max(96, nameRoom(sheet.panels, false))),
                t: first && sheet.bands.length > 0 ? 20 : 6,
                b: 8,
            },
        },
    };
}

// Powers of ten along a logarithmic axis of some decades, their exponents as letters: raised ones would ask for a style that the policy forbids.
function powers(low, high) {
    const first = Math.ceil(low - 1e-9), last = Math.floor(high + 1e-9);
    if (!(last - first >= 2)) return few(low, high);
    const every = Math.ceil((last - first + 1) / 7), exponents = [];
    for (let k = first; k <= last; k++) if ((k - first) % every === 0) exponents.push(k);
    const raised = k => String(k).replace("-", "⁻").replace(/\d/g, digit => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit]);
    return {
        tickmode: "array", tickvals: exponents.map(k => 10 ** k),
        ticktext: exponents.map(k => k >= -2 && k <= 3 ? String(Number((10 ** k).toPrecision(1))) : `10${raised(k)}`),
    };
}

// Along a shorter one ones, twos and fives of each power, where they are read as plain numbers: all nine would crowd.
function few(low, high) {
    if (!(low >= -2 && high <= 5)) return {};
    const values = [];
    for (let k = Math.floor(low) - 1; k <= Math.ceil(high); k++) for (const times of [1, 2, 5]) {
        values.push(Number((times * 10 ** k).toPrecision(1)));
    }
    return { tickmode: "array", tickvals: values, ticktext: values.map(String) };
}

// Where a note stands on an axis: on a logarithmic one a note, unlike a line, is placed by the logarithm.
function noted(axis, value) {
    return axis.log ? Math.log10(value) : value;
}

// About how far an upright axis runs, as its names are placed: by its given ends and its curves.
function reach(panel) {
    const place = value => noted(panel.y, value);
    const known = panel.traces.flatMap(trace => trace.ends ?? []).map(place).filter(Number.isFinite);
    const low = panel.y.from != null ? place(panel.y.from) : Math.min(...known), high = panel.y.to != null ? place(panel.y.to) : Math.max(...known);
    return high > low ? [low, high] : [low - 1, low + 1];
}

const drawn = new WeakMap();

function paint(plotly, element, sheet, bytes, width, fixed) {
    const numbers = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    const { data, layout } = compose(sheet, numbers, colours(element), width);
    const whole = fixed ? { ...layout, ...fixed, width } : layout;
    return plotly.react(element, data, whole, { displayModeBar: false, responsive: true, doubleClick: false });
}

export async function draw(element, structure, bytes, page) {
    const sheet = typeof structure === "string" ? JSON.parse(structure) : structure;
    const plotly = await load(sheet.panels.some(panel => panel.kind === "map"));
    await paint(plotly, element, sheet, bytes, element.clientWidth || 800);
    if (!drawn.has(element)) {
        const redraw = () => { const last = drawn.get(element); if (last) draw(element, last.sheet, last.bytes, last.page); };
        const dark = matchMedia("(prefers-color-scheme: dark)");
        dark.addEventListener("change", redraw);
        // A sheet of paper is narrower than most screens: the chart is drawn anew for it, and back afterwards.
        const onPaper = () => {
            const last = drawn.get(element);
            if (last) paint(plotly, element, last.sheet, last.bytes, Math.min(element.clientWidth || paperWidth, paperWidth), { autosize: false });
        };
        addEventListener("beforeprint", onPaper);
        addEventListener("afterprint", redraw);
        drawn.set(element, {
            sheet, bytes, page,
            forget: () => {
                dark.removeEventListener("change", redraw);
                removeEventListener("beforeprint", onPaper);
                removeEventListener("afterprint", redraw);
            },
        });
        if (page) element.on("plotly_click", event => {
            const point = event.points[0];
            const panel = Number((point.yaxis._id || "y").slice(1) || 1) - 1;
            page.invokeMethodAsync("Pick", panel, Number(point.x), Number(point.y));
        });
    } else {
        Object.assign(drawn.get(element), { sheet, bytes, page });
    }
}

export function clear(element) {
    if (!element) return;
    drawn.get(element)?.forget();
    drawn.delete(element);
    window.Plotly?.purge(element);
}
