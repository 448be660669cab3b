// The reader's colours as the style sheet has them, for what is drawn on a canvas. What is drawn as SVG takes them by class and needs no reading.

export function colours(element = document.documentElement) {
    const style = getComputedStyle(element);
    const get = name => style.getPropertyValue("--" + name).trim();
    return {
        paper: get("paper"), text: get("text"), quiet: get("quiet"), line: get("line"), edge: get("edge"),
        ground: get("ground"), groundDeep: get("ground-deep"),
        First: get("first"), Second: get("second-mark"), Third: get("third"), Fourth: get("fourth"), Fifth: get("fifth"), former: get("former"),
    };
}
