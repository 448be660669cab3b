// Words in lines no wider than so much, but for a single word that is; wide says how wide words are.
export function lines(words, most, wide) {
    const set = [];
    for (const word of words.split(" ")) {
        if (set.length > 0 && wide(`${set.at(-1)} ${word}`) <= most) set[set.length - 1] += ` ${word}`;
        else set.push(word);
    }
    return set;
}
