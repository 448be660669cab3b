using System.Diagnostics;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tuning;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages;

/// <summary>The pass: a car drives over a road, and sliders change it while one looks.</summary>
public partial class PassPage
{
    // How long a hand must rest before the tray follows.
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(120);

    // Whoever moves a slider waits for no record of another's.
    private static readonly SemaphoreSlim OneAtATime = new(1);

    private readonly StateHistory history = new();
    private PassTrial trial = null!;
    private ElementReference root;
    private IJSObjectReference? module;
    private IJSObjectReference? script;
    private DotNetObjectReference<PassPage>? self;
    private PassState? state;
    private PassView? view;
    private PassView? resting;
    private IReadOnlyList<string> wrong = [];
    private IReadOnlyList<(string Heading, IReadOnlyList<SliderLine> Lines)> groups = [];
    private TrayView? tray;
    private CancellationTokenSource? laying;
    private PassFrame? unseen;
    private Road? shown;
    private int states;
    private int told;
    private int recorded;
    private string pinsLeft = "";
    private bool isBegun;

    [Inject]
    private GarageView GarageView { get; set; } = null!;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    [Inject]
    private IJSRuntime Browser { get; set; } = null!;

    /// <summary>A slider is being moved: the picture follows, the address does not yet.</summary>
    /// <param name="key">The setting.</param>
    /// <param name="text">Where the slider stands.</param>
    [JSInvokable]
    public PassFrame Move(string key, string text) => Set(key, text, isLast: false);

    /// <summary>A slider has been let go, or a number typed.</summary>
    /// <param name="key">The setting.</param>
    /// <param name="text">The value; empty: as described.</param>
    [JSInvokable]
    public PassFrame Commit(string key, string text) => Set(key, text, isLast: true);

    /// <summary>Back to the state before.</summary>
    [JSInvokable]
    public Task Undo() => Step(history.Undo(state!));

    /// <summary>Forth again.</summary>
    [JSInvokable]
    public Task Redo() => Step(history.Redo(state!));

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        trial = new PassTrial(GarageView);
        Addresses.LocationChanged += Moved;
        Go(Asked());
    }

    /// <inheritdoc/>
    protected override Task OnAfterRenderAsync(bool firstRender) => PageCall.WhileThere(Rendered);

    private async Task Rendered()
    {
        // In a garage without a car there is nothing to begin on, until one is there.
        if (!isBegun && state is not null)
        {
            isBegun = true;
            module = await Browser.InvokeAsync<IJSObjectReference>("import", "./_content/Heaveline.Web/passpage.js");
            self = DotNetObjectReference.Create(this);
            script = await module.InvokeAsync<IJSObjectReference>("start", root, self);
        }

        if (script is not null && unseen is { } frame)
        {
            unseen = null;
            await script.InvokeVoidAsync("show", frame);
        }

        if (script is not null && recorded != states && resting is { } still)
        {
            recorded = states;
            _ = Record(states, still, [.. groups.SelectMany(group => group.Lines)]);
        }
    }

    // What is recorded of a state at rest reaches the script in its own time, if it is still the state then.
    private async Task Record(int id, PassView still, IReadOnlyList<SliderLine> lines)
    {
        try
        {
            LivePass? live;
            await OneAtATime.WaitAsync();
            try
            {
                live = id == states ? await Task.Run(() => LivePass.Of(id, still, lines, GarageView.Units)) : null;
            }
            finally
            {
                OneAtATime.Release();
            }

            if (live is not null && id == states && script is not null)
            {
                await script.InvokeVoidAsync("follow", live);
            }
        }
        catch (Exception ended) when (PageCall.IsGone(ended))
        {
            // The page is gone.
        }
        catch (Exception unexpected) when (unexpected is not OutOfMemoryException)
        {
            // Nobody waits for this task: what goes wrong in it is told as if somebody did.
            await DispatchExceptionAsync(unexpected);
        }
    }

    private PassState? Asked() => GarageView.UsualCar is { } usual ? PassState.Of(new Uri(Addresses.Uri).Query, usual) : null;

    private void Moved(object? sender, LocationChangedEventArgs e)
    {
        if (new Uri(e.Location).AbsolutePath != new Uri(Addresses.BaseUri).AbsolutePath + "pass" || Asked() is not { } asked
            || (state is not null && asked.IsSameAs(state)))
        {
            return;
        }

        _ = InvokeAsync(() =>
        {
            // Chosen in the head: a step as any other.
            if (state is not null)
            {
                history.Leave(state);
            }

            trial.Forget();
            Go(asked);
            StateHasChanged();
        });
    }

    private Task Choose(PassState chosen)
    {
        pinsLeft = "";
        history.Leave(state!);
        trial.Forget();
        return Step(chosen);
    }

    private Task Step(PassState? next)
    {
        if (next is not null)
        {
            Go(next);
            Addresses.NavigateTo("pass" + next.Query, replace: true);
            StateHasChanged();
        }

        return Task.CompletedTask;
    }

    // A state as a whole: what can be shown is shown, and what cannot is said.
    private void Go(PassState? next)
    {
        state = next;
        if (next is null)
        {
            return;
        }

        var clock = Stopwatch.StartNew();
        try
        {
            var (seen, objections) = trial.See(next, full: true);
            wrong = [.. objections.Select(o => o.Sentence)];
            if (seen is not null)
            {
                view = resting = seen;
                told++;
                groups = SliderLine.Of(view, GarageView.Units);
                unseen = Frame(view, clock, atRest: true);
            }
            else if (objections.Any(o => o.Choice == Choices.Car.Name))
            {
                view = resting = null;
            }
        }
        catch (NoAnswerException refused)
        {
            wrong = [refused.Message];
        }

        LayTray();
    }

    // In the background and a moment later: the picture does not wait for it, and of several steps only the last one is laid out.
    private void LayTray()
    {
        laying?.Cancel();
        laying?.Dispose();
        laying = null;
        if (RendererInfo.IsInteractive && resting is not null && state is not null)
        {
            laying = new CancellationTokenSource();
            _ = LayTray(state, laying.Token);
        }
    }

    private async Task LayTray(PassState asked, CancellationToken stop)
    {
        try
        {
            await Task.Delay(Rest, stop);
            var laid = await Task.Run(() => TrayView.Of(GarageView, asked, stop), stop);
            if (!stop.IsCancellationRequested)
            {
                tray = laid;
                StateHasChanged();
            }
        }
        catch (Exception) when (stop.IsCancellationRequested)
        {
            // Another one is being laid out, or the page is closed and its garage with it.
        }
        catch (Exception e)
        {
            await DispatchExceptionAsync(e);
        }
    }

    private IReadOnlyCollection<string> Follow(IReadOnlyCollection<string> names)
    {
        var shown = GarageView.FilesOf(new[] { state!.Car, state.Beside, state.Road }.OfType<string>());
        string[] ours = [.. names.Where(shown.Contains)];
        if (ours.Length > 0)
        {
            trial.Forget();
            Go(state);
        }

        StateHasChanged();
        return ours;
    }

    private PassFrame Set(string key, string text, bool isLast)
    {
        var clock = Stopwatch.StartNew();
        if (state is not { } now || !PassState.Keys.Contains(key))
        {
            return PassFrame.Refused(key, "There is no such setting.", 0.0);
        }

        try
        {
            var next = now.With(key, ValueOf(now, key, text));
            var (seen, objections) = trial.See(next, full: isLast);
            if (seen is null)
            {
                return PassFrame.Refused(key, Units(string.Join(' ', objections.Select(o => o.Sentence)), text), clock.Elapsed.TotalMilliseconds);
            }

            view = seen;
            told++;
            wrong = [];
            if (isLast)
            {
                history.Leave(now);
                state = next;
                resting = view;
                groups = SliderLine.Of(view, GarageView.Units);
                LayTray();
            }

            var frame = Frame(view, clock, isLast);
            StateHasChanged();
            if (isLast)
            {
                Addresses.NavigateTo("pass" + next.Query, replace: true);
            }

            return frame;
        }
        catch (NoAnswerException refused)
        {
            return PassFrame.Refused(key, Units(refused.Message, text), clock.Elapsed.TotalMilliseconds);
        }
    }

    // What is said of a value is said in the reader's units, but what was typed stays as it was typed.
    private string Units(string sentence, string typed) => GarageView.Units.Leaving([$"“{typed.Trim()}”"]).Text(sentence);

    // Null: as described.
    private double? ValueOf(PassState now, string key, string text)
    {
        if (text.Length == 0)
        {
            return null;
        }

        var line = groups.SelectMany(group => group.Lines).FirstOrDefault(one => one.Key == key);
        var value = Rounded.Typed(text, line?.Scale.Unit ?? "");
        if (now.AsFrequencies && Settings.All(now.InertiaGrows).FirstOrDefault(one => one.Key == key) is SpringSetting spring)
        {
            return Rounded.Significant(PassTrial.RateFor(view!, now, spring, value), 5);
        }

        return line is null ? value : line.Own(value);
    }

    private PassFrame Frame(PassView of, Stopwatch clock, bool atRest)
    {
        states += atRest ? 1 : 0;
        var frame = PassFrame.Of(of, GarageView.Units, shown, clock, atRest ? groups.SelectMany(group => group.Lines) : null, states, told);
        shown = frame.Numbers.Length > 0 ? of.Now.Pass.Road : shown;
        return frame;
    }

    private void OpenVariant(string name)
    {
        var values = state!.Values.RemoveRange(Settings.All(false).Select(setting => setting.Key)).Remove(Luggage.Key);
        var (pins, left) = GarageView.Car(name)?.Value is { } variant ? PinsAlong.Of(resting!, variant)
            : ([], [.. state!.Pins.Select(pin => pin.Place)]);
        pinsLeft = left.Count == 0 ? ""
            : $"{string.Join(" and ", left.Select(place => TrialTrayLetters.Of(place)))} {(left.Count == 1 ? "is" : "are")} pinned no more: what "
                + $"{(left.Count == 1 ? "it sets" : "they set")} cannot be set on the variant.";
        var next = state! with { Car = name, Load = resting!.Now.Model.Load.Name, Beside = state!.Car, Values = values, Pins = pins };
        Addresses.NavigateTo($"pass{next.Query}");
    }

    private PassState Fresh => new() { Car = GarageView.UsualCar! };

    // What is held against a variant stays: a slider moves the car before the change.
    private static string? Headline(PassView of) =>
        of.IsTurned || PassVerdict.Of(of).Number.Length == 0 ? null : PassCatalogue.PitchOver(of.Now.Pass.Road)[0].Key;

    private static string Curves(PassView of) => of.Now.Pass.Count > 1
        ? PassCaption.AltText(of.Now.Pass, of.Now.Measures, PassPanels.Of(of.Now.Pass, of.Now.Measures).Length)
        : "No curves: the crossing broke off at once.";

    private static string Caption(PassView of) => $"{(of.Road.Event is null ? "" : EventBands.Meaning)} {ReaderSigns.Pitch}"
        + (of.Former is null ? "" : $" The wide tint: {of.Against}.");

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        Addresses.LocationChanged -= Moved;
        laying?.Cancel();
        laying?.Dispose();
        laying = null;
        await PageCall.WhileThere(async () =>
        {
            if (script is not null)
            {
                await script.InvokeVoidAsync("stop");
                await script.DisposeAsync();
            }

            if (module is not null)
            {
                await module.DisposeAsync();
            }
        });
        self?.Dispose();
    }
}
