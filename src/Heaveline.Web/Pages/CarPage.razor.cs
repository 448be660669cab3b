using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Heaveline.Files.Forms;
using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages;

/// <summary>The car page: a file as a form and as text, its drawing and its numbers, and how it is kept.</summary>
public sealed partial class CarPage : IDisposable
{
    private const string FirstPart = "car";

    // How long numbers without their doubts are held back, so that the bands do not flicker while one types.
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(250);

    private CarEditor? editor;
    private FormActs? acts;
    private DraftOffer? drafts;
    private CarNumbers? numbers;
    private CarDraft? counted;
    private CancellationTokenSource? counting;
    private string? shown;
    private string problem = "";
    private string title = "";
    private string lede = "";
    private string said = "";
    private string followed = "";
    private string uncounted = "";
    private string text = "";
    private bool isTextOpen;
    private Making making;
    private string? leavingTo;
    private bool mayLeave;
    private bool focusStay;
    private ElementReference stay;
    private IReadOnlyList<Remark> loose = [];
    private IReadOnlyList<Remark> looseSlips = [];
    private IReadOnlyList<FormField> missing = [];

    private enum Making
    {
        Nothing,
        Copy,
        Variant,
        Elsewhere,
    }

    /// <summary>The car's name.</summary>
    [SupplyParameterFromQuery]
    public string? Car { get; set; }

    /// <summary>The open parts, by their keys with blanks between them.</summary>
    [SupplyParameterFromQuery]
    public string? Open { get; set; }

    /// <summary>What is in hand.</summary>
    [CascadingParameter]
    private CurrentCar InHand { get; set; } = new();

    [Inject]
    private IJSRuntime Browser { get; set; } = null!;

    [Inject]
    private GarageView GarageView { get; set; } = null!;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    private int NotMeasured => editor!.Sections.Sum(section => section.Unmeasured);

    private int Lines => editor!.Draft.Text.Count(c => c == '\n');

    /// <summary>Stops what is being counted: nobody looks any more.</summary>
    public void Dispose() => Replace(null);

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (Car == shown)
        {
            return;
        }

        shown = Car;
        (editor, acts, numbers, counted, said, problem, leavingTo, making, mayLeave) = (null, null, null, null, "", "", null, Making.Nothing, false);
        if (string.IsNullOrEmpty(Car))
        {
            return;
        }

        (editor, problem) = CarEditor.Open(GarageView.Garage, GarageView.FileOf(Car));
        if (editor is null)
        {
            return;
        }

        acts = new FormActs(editor, Changed, Toggled) { Units = GarageView.Units };
        acts.Open.UnionWith(
            Open is null ? [FirstPart, "variant"] : Open.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Uri.UnescapeDataString));
        if (editor.Good?.Reading.Value is { } car)
        {
            Try(() => numbers = CarNumbers.Of(car));
            counted = RendererInfo.IsInteractive ? null : editor.Good;
        }

        Changed();
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (focusStay && leavingTo is not null)
        {
            focusStay = false;
            await Browser.Onward(stay);
        }
    }

    private void Changed()
    {
        loose = [.. editor!.Findings.Where(remark => remark.IsRefusal && remark.Path.Count == 0)];
        looseSlips = [.. editor.Findings.Where(remark => !remark.IsRefusal && remark.Path.Count == 0)];
        missing = FormSection.Missing(editor.Draft);
        text = editor.Draft.Text;
        isTextOpen = acts!.Open.Contains("text");
        if (editor.Good is { Reading.Value: { } car } good)
        {
            title = editor.Draft.IsVariant ? $"{car.Name}: what is changed"
                : editor.Draft.Unmeasured.Count > 0 ? $"{car.Name}, measured in part" : $"{car.Name}, as it was measured";
            lede = editor.Draft.IsVariant
                ? $"A variant of {editor.Draft.BaseFile ?? good.BaseFile}. {car.Note}"
                : car.Note.Length > 0 ? car.Note : "Its file as a form, and what follows from it at every load state.";
            if (good != counted && RendererInfo.IsInteractive)
            {
                counted = good;
                _ = Count(good, car);
            }
        }
        else
        {
            title = $"{editor.Draft.File}, which is no car yet";
            lede = "Put right what is refused; drawing and numbers follow.";
        }

        StateHasChanged();
    }

    private async Task Count(CarDraft good, Heaveline.Cars.Car car)
    {
        // What is counted for an older text is counted no further.
        var stop = Replace(new CancellationTokenSource())!.Token;
        try
        {
            var stated = new TaskCompletionSource<CarNumbers>();
            var doubtful = Task.Run(() => CarNumbers.WithDoubts(car, stated.SetResult, stop), stop);
            if (await Task.WhenAny(doubtful, Task.Delay(Patience)) != doubtful)
            {
                Show(await await Task.WhenAny(stated.Task, doubtful), "");
            }

            Show(await doubtful, "");
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Another count is on its way, or the page is closed.
        }
        catch (NoAnswerException e)
        {
            Show(numbers, $"The numbers cannot be computed: {e.Message}");
        }
        catch (Exception e)
        {
            await DispatchExceptionAsync(e);
        }

        void Show(CarNumbers? found, string words)
        {
            // What was counted for an older text comes too late.
            if (counted == good)
            {
                (numbers, uncounted) = (found, words);
                StateHasChanged();
            }
        }
    }

    // Stops the count before.
    private CancellationTokenSource? Replace(CancellationTokenSource? next)
    {
        var before = counting;
        counting = next;
        before?.Cancel();
        before?.Dispose();
        return next;
    }

    private void Try(Action count)
    {
        try
        {
            count();
            uncounted = "";
        }
        catch (NoAnswerException e)
        {
            uncounted = $"The numbers cannot be computed: {e.Message}";
        }
    }

    private Task TypeText(string? typed)
    {
        text = typed ?? "";
        return acts!.TypeWhole(text);
    }

    private void Toggled(IReadOnlyCollection<string> open)
    {
        isTextOpen = open.Contains("text");
        var words = string.Join(' ', open.Order(StringComparer.Ordinal).Select(Uri.EscapeDataString));
        Addresses.NavigateTo(Addresses.GetUriWithQueryParameter("open", words), replace: true);
        StateHasChanged();
    }

    private void Save()
    {
        acts!.Settle();
        Tell(editor!.Save());
    }

    private void Tell(SaveOutcome outcome)
    {
        said = outcome.End switch
        {
            SaveEnd.Saved => outcome.Earlier is null ? "Saved." : "Saved. The version before it is among the earlier ones.",
            SaveEnd.Unchanged => "Saved: the file holds this very text.",
            SaveEnd.Conflict => "",
            _ => $"Not saved: {outcome.Message} {outcome.Advice}",
        };
        Changed();
    }

    private void Undo()
    {
        acts!.Settle();
        editor!.Undo();
        Changed();
    }

    private void Reload()
    {
        editor!.Reload();
        said = "This is what stood on the disk.";
        Changed();
    }

    private IReadOnlyCollection<string> Follow(IReadOnlyCollection<string> names)
    {
        var own = editor!.Draft.Reading.Sources.Select(source => source.File).ToHashSet(StringComparer.Ordinal);
        string[] ours = [.. names.Where(own.Contains)];
        var met = names.Contains(editor.Draft.File) ? editor.Follow() : null;
        if (met is null && ours.All(name => name == editor.Draft.File))
        {
            // Saved here, or not ours.
            return [];
        }

        editor.Reread();
        followed = met is null ? "taken into the numbers here"
            : met.End == SaveEnd.Conflict ? "shown here as it is now; \"Take back the last step\" brings what stood here before"
            : $"but {met.Message} {met.Advice}".TrimEnd('.');
        said = "";
        Changed();
        // A conflict speaks for itself.
        return editor.Conflict is not null ? []
            : [.. ours.Append(editor.Draft.File).Distinct().Where(name => met is not null || name != editor.Draft.File)];
    }

    private void Overwrite() => Tell(editor!.Overwrite());

    private void PutOff()
    {
        editor!.PutOff();
        Changed();
    }

    private void SaveElsewhere()
    {
        making = Making.Elsewhere;
        StateHasChanged();
    }

    private void Restore(EarlierVersion version)
    {
        if (editor!.ReadEarlier(version.Until).Text is { } old)
        {
            editor.Write(old);
            Tell(editor.Save());
        }
        else
        {
            said = "That version is no longer kept.";
            Changed();
        }
    }

    private void OpenNew(string file)
    {
        mayLeave = true;
        Addresses.NavigateTo(InHand.For(GarageView.NameOf(file)).On("car"));
    }

    private void Guard(LocationChangingContext leaving)
    {
        acts!.Settle();
        var target = Addresses.ToAbsoluteUri(leaving.TargetLocation);
        var here = new Uri(Addresses.Uri);
        var stays = target.AbsolutePath == here.AbsolutePath
            && Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(target.Query).TryGetValue("car", out var car) && car == Car;
        if (stays || mayLeave || !editor!.IsChanged)
        {
            return;
        }

        leaving.PreventNavigation();
        (leavingTo, focusStay) = (leaving.TargetLocation, true);
        StateHasChanged();
    }

    private void SaveAndGo()
    {
        Save();
        if (editor!.IsChanged)
        {
            leavingTo = null;
        }
        else
        {
            Go();
        }
    }

    private async Task GiveUpAndGo()
    {
        await drafts!.Drop();
        Go();
    }

    private void Go()
    {
        mayLeave = true;
        Addresses.NavigateTo(leavingTo!);
    }
}
