// Axes: from a value to a place and back, and which places bear a number.

/** An axis from low to high, drawn between two pixels. */
export function scale(isLog, low, high, from, to) {
    const inner = isLog ? Math.log10 : value => value, outer = isLog ? value => 10 ** value : value => value;
    const a = inner(low), b = inner(high);
    return {
        isLog, low, high, from, to,
        at: value => from + (inner(value) - a) / (b - a) * (to - from),
        back: pixel => outer(a + (pixel - from) / (to - from) * (b - a)),
    };
}

/** Least and greatest of some numbers, those that are none left out. */
export function extremes(...columns) {
    let low = Infinity, high = -Infinity;
    for (const values of columns) for (const value of values) {
        if (value < low) low = value;
        if (value > high) high = value;
    }
    return [low, high];
}

/** The range of an axis: its given ends, else those of the values, with a share of room beside them. */
export function range(axis, [least, most], room) {
    const inner = axis.log ? Math.log10 : value => value, outer = axis.log ? value => 10 ** value : value => value;
    let low = inner(axis.from ?? least), high = inner(axis.to ?? most);
    if (!(Number.isFinite(low) && Number.isFinite(high))) return axis.log ? [.1, 10] : [0, 1];
    // A hair of a range (rounding noise on a constant) counts as flat, and a flat curve gets room above and below.
    const size = Math.max(Math.abs(low), Math.abs(high)), flat = axis.log ? .5 : .1 * size || .5;
    if (!(high - low > 1e-9 * (axis.log ? 1 : size))) { low -= flat; high += flat; }
    const more = room * (high - low);
    return [axis.from ?? outer(low - more), axis.to ?? outer(high + more)];
}

/** Places with a number, and fine ones without. */
export function ticks(isLog, low, high, most) {
    return isLog ? logarithmic(low, high, most) : { fine: [], main: even(low, high, most).map(at => ({ at, text: print(at) })) };
}

/** Steps of 1, 2 or 5 times a power of ten, at most so many. */
export function even(low, high, most) {
    const rough = (high - low) / Math.max(1, most);
    // Steps below the digits of the values themselves would never end.
    if (!(rough > 1e-11 * Math.max(Math.abs(low), Math.abs(high)))) return [low];
    const power = 10 ** Math.floor(Math.log10(rough)), step = [1, 2, 5, 10].find(n => n * power >= rough * .999) * power, list = [];
    for (let k = Math.ceil(low / step - 1e-5); k * step <= high + 1e-5 * step; k++) list.push(Number((k * step).toPrecision(12)));
    return list;
}

// Over two decades and more the powers of ten bear a number, and between them stand fine marks; over less than that ones, twos and fives.
function logarithmic(low, high, most) {
    const first = Math.ceil(Math.log10(low) - 1e-9), last = Math.floor(Math.log10(high) + 1e-9);
    const inside = value => value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9), places = times => {
        const list = [];
        for (let k = first - 1; k <= last; k++) for (const n of times) {
            const value = Number((n * 10 ** k).toPrecision(1));
            if (inside(value)) list.push(value);
        }
        return list;
    };
    if (last - first < 2) {
        const all = [[1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 2, 5], [1]].slice(high > 5 * low ? 1 : 0).map(places);
        const main = all.find(list => list.length <= most) ?? all.at(-1);
        return { fine: places([1, 2, 3, 4, 5, 6, 7, 8, 9]), main: main.map(at => ({ at, text: power(at, low, high) })) };
    }
    const every = Math.ceil((last - first + 1) / Math.max(2, most)), main = [];
    for (let k = first; k <= last; k++) if ((k - first) % every === 0) main.push({ at: 10 ** k, text: power(10 ** k, low, high) });
    return { fine: last - first <= 7 ? places([2, 3, 4, 5, 6, 7, 8, 9]) : [], main };
}

// Plain numbers where all of an axis are short ones, else powers of ten; raised letters, for a raised style would have to be measured.
function power(value, low, high) {
    if (low >= 9.9e-4 && high <= 1.01e5) return print(value);
    const k = Math.floor(Math.log10(value) + 1e-9), times = Math.round(value / 10 ** k);
    const raised = String(k).replace("-", "⁻").replace(/\d/g, digit => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit]);
    return `${times === 1 ? "" : times + "·"}10${raised}`;
}

/** A number of an axis. */
export const print = value => signed(value, Number(Math.abs(value).toPrecision(6)).toString());

/** A place that is read: four digits that count, no more of them than it has. */
export const place = value => print(Number(value.toPrecision(4)));

/** A number that is read off: three digits that count. */
export function reading(value) {
    if (!Number.isFinite(value)) return "none";
    const size = Math.abs(value);
    if (size !== 0 && (size < 1e-3 || size >= 1e6)) {
        const [digits, k] = size.toExponential(2).split("e");
        return signed(value, `${digits}·10${k.replace("+", "").replace("-", "⁻").replace(/\d/g, digit => "⁰¹²³⁴⁵⁶⁷⁸⁹"[digit])}`);
    }
    return signed(value, size >= 1000 ? size.toFixed(0) : size.toPrecision(3));
}

const signed = (value, words) => (value < 0 && Number(words) !== 0 ? "−" : "") + words;
