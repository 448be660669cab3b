using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace Heaveline.Web.Frame;

/// <summary>
/// The sheet of every page: its head holds the car in hand, as the page's address says it. Where no address says it, it is the last one of this
/// browser: that stands in the browser's own storage and not in a cookie, so that nothing of it is sent along with a request, programs at other
/// ports of this machine know nothing of it, and it is the garage's own.
/// </summary>
public sealed partial class Sheet : IAsyncDisposable
{
    private ErrorBoundary? boundary;
    private CurrentCar? current;
    private PageEntry page = PageEntry.All[0];
    private IReadOnlyList<string> unread = [];
    private bool isNamed;
    private bool isBump = true;
    private string? remembered;
    private IJSObjectReference? script;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    [Inject]
    private GarageView Garage { get; set; } = null!;

    [Inject]
    private IJSRuntime Browser { get; set; } = null!;

    // A base address stands in the head: a bare fragment would lead to the first page.
    private string SkipTo => Addresses.Uri.Split('#')[0] + "#content";

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Addresses.LocationChanged += Moved;
        Read();
    }

    /// <inheritdoc/>
    protected override void OnParametersSet() => boundary?.Recover();

    /// <inheritdoc/>
    protected override Task OnAfterRenderAsync(bool firstRender) => PageCall.WhileThere(() => Rendered(firstRender));

    private async Task Rendered(bool firstRender)
    {
        if (!RendererInfo.IsInteractive || Garage.UsualCar is null)
        {
            return;
        }

        if (script is null)
        {
            script = await Browser.InvokeAsync<IJSObjectReference>("import", "./_content/Heaveline.Web/inhand.js");
            if (!isNamed && await script.InvokeAsync<string?>("last") is { } last && CurrentCar.Of(last) is { Car: { } car } found
                && Garage.CarNames.Contains(car))
            {
                current = found.With(current?.Drives is { IsEmpty: false } here ? here : found.Drives, "", Drives);
                isBump = IsBump(current);
                StateHasChanged();
            }
            else if (isNamed && current is { Drives.IsEmpty: true } && page.Path != CurrentCar.Report
                && await script.InvokeAsync<string?>("last") is { } former)
            {
                current = current.With(CurrentCar.Of(former).Drives, page.Path, Drives);
                StateHasChanged();
            }
        }

        // What is not here is not remembered.
        if ((isNamed || page.Path == PageEntry.Drive) && current is { Car: { } named })
        {
            var links = PageEntry.All.Where(entry => !entry.IsApart).ToDictionary(entry => "/" + entry.Path, entry => "/" + Link(entry.Path));
            var kept = Garage.CarNames.Contains(named) ? string.Join('\n', links.Values) : "";
            if (kept != remembered)
            {
                remembered = kept;
                await script.InvokeVoidAsync("keep", kept.Length > 0 ? links : null);
            }
        }
    }

    private string Link(string path) => current is null || PageEntry.All.First(entry => entry.Path == path).IsApart ? path : current.On(path, isBump);

    private IReadOnlyList<string> Drives => Garage.SoundDrives;

    private bool IsBump(CurrentCar? of) => of?.Road is not { } road || Garage.Road(road)?.Value is not { Event: null };

    private void Moved(object? sender, LocationChangedEventArgs e) => InvokeAsync(() =>
    {
        Read();
        StateHasChanged();
    });

    private void Read()
    {
        var uri = new Uri(Addresses.Uri);
        var path = uri.AbsolutePath[new Uri(Addresses.BaseUri).AbsolutePath.Length..].TrimEnd('/');
        page = PageEntry.All.FirstOrDefault(entry => entry.Path == path) ?? new PageEntry(path, "");
        unread = page.Words.Length == 0 ? [] : AddressWords.Of(page, uri.Query);
        if (page.IsApart || page.Words.Length == 0 || Garage.UsualCar is not { } usual)
        {
            return;
        }

        var said = CurrentCar.Of(uri.Query);
        isNamed = said.Car is not null || page.ShowsCar;
        var drives = current?.Drives ?? [];
        if (isNamed || current is null)
        {
            current = said with { Car = said.Car ?? usual, Speed = said.Speed ?? page.UsualSpeed };
            isBump = IsBump(current);
        }

        // The page of the drive shows one even where its address names none.
        var shown = page.Path == PageEntry.Drive && said.Drives.IsEmpty && Garage.UsualDrive is { } last ? [last] : said.Drives;
        current = (current with { Drives = drives }).With(shown, page.Path, Drives);
    }

    // What the page alone chooses stays in its address.
    private void Choose(CurrentCar next)
    {
        var words = CurrentCar.TrialKeys.Concat(["seat", CurrentCar.SpringsKey, CurrentCar.InertiaKey])
            .Where(key => key != "seat" || next.Car != current!.Car)
            .ToDictionary(key => key, _ => (object?)null, StringComparer.Ordinal);
        // The head chooses no drive: those of the page stay, two of a report too.
        foreach (var (key, word) in next.Words(page.Path, IsBump(next)).Where(one => one.Key is not (CurrentCar.LogKey or CurrentCar.DriveKey)))
        {
            words[key] = string.IsNullOrEmpty(word) ? null : word;
        }

        if (page.Path == CurrentCar.Report && new Uri(Addresses.Uri) is var uri
            && Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(uri.Query).TryGetValue("car", out var cars) && cars.Count > 1)
        {
            words["car"] = (string[])[next.Car!, .. cars.Skip(1).OfType<string>().Where(name => name != next.Car)];
            words["beside"] = null;
        }

        Addresses.NavigateTo(Addresses.GetUriWithQueryParameters(words), replace: true);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Addresses.LocationChanged -= Moved;
        await PageCall.WhileThere(async () =>
        {
            if (script is not null)
            {
                await script.DisposeAsync();
            }
        });
    }
}
