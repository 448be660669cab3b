using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;

namespace Heaveline.Web.Pages.Parts;

/// <summary>A field for a file. One that is chosen before the field is listened to waits in it and is heard then (early.js).</summary>
public sealed class FileField : InputFile
{
    [Inject]
    private IJSRuntime Browser { get; set; } = null!;

    /// <inheritdoc/>
    protected override void OnParametersSet() =>
        AdditionalAttributes = new Dictionary<string, object>(AdditionalAttributes ?? new Dictionary<string, object>())
        {
            ["data-script"] = "waiting",
            ["data-scripted"] = "",
        };

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        await base.OnAfterRenderAsync(firstRender);
        if (firstRender && Element is { } field)
        {
            await PageCall.WhileThere(async () => await Browser.InvokeVoidAsync("heaveline.heard", field));
        }
    }
}
