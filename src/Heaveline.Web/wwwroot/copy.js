/* Copies what a button carries, and says beside it that it has. Where a browser gives a page no clipboard (an address without encryption), the old
   way is taken: a field that nobody sees, selected and copied. */
const stays = 4_000;

document.addEventListener("click", async (event) => {
    const button = event.target instanceof Element ? event.target.closest("button[data-copy-text]") : null;
    if (!button) return;
    const said = document.getElementById(button.dataset.copySays);
    said.textContent = (await copied(button.dataset.copyText)) ? "copied" : "not copied: this browser does not let a page do it";
    const words = said.textContent;
    setTimeout(() => said.textContent === words && (said.textContent = ""), stays);
});

async function copied(text) {
    if (!navigator.clipboard) return copiedBySelecting(text);
    try {
        await navigator.clipboard.writeText(text);
        return true;
    } catch (refusal) {
        if (refusal instanceof DOMException) return copiedBySelecting(text);
        throw refusal;
    }
}

function copiedBySelecting(text) {
    const before = document.activeElement;
    const field = document.createElement("textarea");
    field.value = text;
    field.readOnly = true;
    field.className = "hidden-label";
    document.body.append(field);
    field.select();
    const done = document.execCommand("copy");
    field.remove();
    before?.focus?.();
    return done;
}
