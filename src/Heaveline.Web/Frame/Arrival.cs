using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Heaveline.Web.Frame;

/// <summary>Has a page that was gone to read from its heading: the focus goes there, unless the reader has put it elsewhere meanwhile.</summary>
public sealed class Arrival : ComponentBase
{
    private Type? read;

    /// <summary>The page.</summary>
    [Parameter, EditorRequired]
    public required Type Page { get; set; }

    [Inject]
    private IJSRuntime Browser { get; set; } = null!;

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (read != Page)
        {
            read = Page;
            await PageCall.WhileThere(async () => await Browser.InvokeVoidAsync("heaveline.arrived"));
        }
    }
}
