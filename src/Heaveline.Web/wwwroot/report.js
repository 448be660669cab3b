// Copies the lines that make a report again. Where the browser does not let a page write to the clipboard, the line is marked for the reader to copy.

/**
 * Listens to the buttons inside an element, now and later: data-copy names the element whose text is meant, data-copied the place to say
 * what came of it.
 */
export function attach(page) {
    // Another page is shown by now.
    if (!page) {
        return;
    }
    page.addEventListener("click", async (event) => {
        const button = event.target.closest("[data-copy]");
        if (!button) {
            return;
        }

        const line = document.getElementById(button.dataset.copy);
        const says = page.querySelector(`[data-copied="${button.dataset.copy}"]`);
        says.textContent = (await written(line.textContent)) ? "Copied." : marked(line);
    });
    heaveline.heard(page);
}

async function written(text) {
    if (!navigator.clipboard) {
        return false;
    }

    try {
        await navigator.clipboard.writeText(text);
        return true;
    } catch (refusal) {
        if (refusal instanceof DOMException) {
            return false;
        }

        throw refusal;
    }
}

function marked(line) {
    const range = document.createRange();
    range.selectNodeContents(line);
    const selection = window.getSelection();
    selection.removeAllRanges();
    selection.addRange(range);
    return "The browser does not let the page copy. The line is marked: copy it with Ctrl+C, or hold it on a phone.";
}
