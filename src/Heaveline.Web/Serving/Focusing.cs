using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Heaveline.Web.Serving;

/// <summary>
/// Puts the focus where a press led. The program asks for it when the browser has shown what it drew, which on a slow machine is a while after a
/// reader has seen it: who has gone on meanwhile keeps the focus (early.js).
/// </summary>
internal static class Focusing
{
    /// <summary>Puts the focus on an element, unless the reader has put it elsewhere since the last press.</summary>
    /// <param name="browser">The page's browser.</param>
    /// <param name="element">The element.</param>
    /// <param name="isStill">Whether the page must not move under it.</param>
    public static Task Onward(this IJSRuntime browser, ElementReference element, bool isStill = false) =>
        PageCall.WhileThere(async () => await browser.InvokeVoidAsync("heaveline.onward", element, isStill));
}
