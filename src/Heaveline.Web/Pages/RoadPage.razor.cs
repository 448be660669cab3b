using Heaveline.Figures;
using Heaveline.Files.Editing;
using Heaveline.Files.Garages;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Pages.Parts;
using Heaveline.Web.Pages.Roads;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;

namespace Heaveline.Web.Pages;

/// <summary>
/// A road made of its sizes: drawn while they are typed, saved as a file of the garage, opened again. What is typed stands in the address, so that
/// a page loaded again has it.
/// </summary>
public sealed partial class RoadPage
{
    private readonly Dictionary<string, string> typed = new(StringComparer.Ordinal);
    private IReadOnlyList<ListEntry> files = [];
    private (string? File, string? From, bool IsRead) shown;
    private string? basis;
    private Stamp? stamp;
    private RoadDraft draft = null!;
    private Road? drawn;
    private Figure? figure;
    private string? unopened;
    private string problem = "";
    private string said = "";

    /// <summary>The road file of the garage that is open; null for a new one.</summary>
    [SupplyParameterFromQuery]
    public string? File { get; set; }

    /// <summary>The road that a new one begins from; null for none.</summary>
    [SupplyParameterFromQuery]
    public string? From { get; set; }

    [Inject]
    private GarageView Garage { get; set; } = null!;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    /// <summary>What is in hand: the car that drives over it.</summary>
    [CascadingParameter]
    private CurrentCar InHand { get; set; } = new();

    private bool IsChanged => draft.Text != basis;

    // Nothing else stands between it and its file.
    private bool LacksName => draft.Road is not null && draft.Title.Trim().Length == 0;

    private bool MaySave => draft.Road is not null && !LacksName && NameRefusal is null && (Target is null || IsChanged);

    private string Heading => Target is not null && draft.Title.Length > 0 ? FirstLetter.Raised(draft.Title) : "A new road";

    private string Lede => drawn is null ? "Choose what it is, give its sizes, and see it drawn to scale."
        : $"{FirstLetter.Raised(drawn.Caption)}.{(IsChanged ? " Not saved yet." : "")}";

    private string? NameRefusal => draft.Title.Trim().Length == 0 ? null
        : Target is null ? FileName.Problem(FileName.Of(draft.Title, "")) : null;

    // Roads of the garage are copied there.
    private IReadOnlyList<ListEntry> Begun => [new("", "nothing"), .. Garage.RoadTitles.Where(road => GarageView.RoadNames.Contains(road.Name))
        .Select(road => new ListEntry(road.Name, road.Words))];

    // The file that is changed; null for a new road.
    private string? Target => unopened is null && File is { Length: > 0 } ? File : null;

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (shown == (File, From, true))
        {
            return;
        }

        shown = (File, From, true);
        typed.Clear();
        var query = QueryHelpers.ParseQuery(new Uri(Addresses.Uri).Query);
        foreach (var key in RoadDraft.Keys)
        {
            if (query.TryGetValue(key, out var words) && words.LastOrDefault() is { } text)
            {
                typed[key] = text;
            }
        }

        (problem, said) = ("", "");
        Read();
    }

    private void Read()
    {
        (basis, stamp, unopened) = (null, null, null);
        var own = Garage.GarageRoads;
        files = [new("", "a new road"), .. Garage.RoadTitles.Where(road => own.Contains(road.Name))
            .Select(road => new ListEntry(road.Name, road.Words))];
        if (File is { Length: > 0 } file)
        {
            var read = Garage.Garage.Read(file);
            (basis, stamp) = own.Contains(file) ? (read.Text, read.Stamp) : (null, null);
            unopened = basis is null ? $"There is no road {file} in this garage." : null;
        }
        else if (From is { Length: > 0 } from && Garage.Road(from)?.Sources is [var source, ..])
        {
            // Its note was the other's.
            basis = RoadFile.Edit(source.Text, KeyEdit.Remove(["note"])).Text ?? source.Text;
        }

        Look();
    }

    private void Look()
    {
        draft = RoadDraft.Of(basis, typed, Garage.Units, isNew: Target is null);
        drawn = draft.Road ?? (draft.Kind is null && Target is not null ? Garage.Road(Target)?.Value : null);
        figure = drawn is null ? null : ObstacleFigure.Of(drawn);
    }

    // What is typed last stands in its box as it was typed, whatever the address says meanwhile.
    private string Word(string key, string otherwise) => typed.GetValueOrDefault(key, otherwise);

    private void Type(string key, string? words)
    {
        typed[key] = words ?? "";
        (problem, said) = ("", "");
        Look();
        var all = RoadDraft.Keys.ToDictionary(one => one, one => (object?)typed.GetValueOrDefault(one));
        Addresses.NavigateTo(Addresses.GetUriWithQueryParameters(all), replace: true);
    }

    private void Open(string file) => Go(file.Length > 0 ? file : null, null);

    private void Begin(string road) => Go(null, road.Length > 0 ? road : null);

    // A step of the browser's own: going back brings what was typed.
    private void Go(string? file, string? from, bool replaces = false)
    {
        var words = RoadDraft.Keys.ToDictionary(key => key, _ => (object?)null);
        (words["file"], words["from"]) = (file, from);
        Addresses.NavigateTo(Addresses.GetUriWithQueryParameters(words), replace: replaces);
    }

    private void GiveUp()
    {
        typed.Clear();
        (problem, said) = ("", "This is what stands in its file.");
        Look();
        Go(File, null, replaces: true);
    }

    private void Save(bool drives)
    {
        if (!MaySave)
        {
            problem = draft.Title.Trim().Length == 0 ? "Give it a name: its file is called after it." : problem;
            return;
        }

        var (target, file) = (Target, Target ?? FileName.Of(draft.Title, ""));
        var saved = Garage.Garage.Save(file, draft.Text, stamp);
        if (saved.End == SaveEnd.Conflict && target is not null)
        {
            Read();
            problem = Target is null
                ? $"{file} is gone from the disk since it was read. Saved from here it is a new road."
                : $"{file} was changed by somebody else meanwhile. What you typed stands here over what the file says now: look, and save it again.";
            return;
        }

        problem = FileName.Problem(saved, file);
        if (problem.Length > 0)
        {
            return;
        }

        if (drives)
        {
            Addresses.NavigateTo((InHand with { Road = file, Height = null }).On("pass"));
            return;
        }

        typed.Clear();
        shown = (file, null, true);
        File = file;
        Read();
        said = saved.Earlier is null ? $"Saved as {file}." : "Saved. The version before it is among the earlier ones.";
        Go(file, null, replaces: true);
    }

    private IReadOnlyCollection<string> Follow(IReadOnlyCollection<string> names)
    {
        var file = Target;
        var isOurs = file is not null && names.Contains(file) && Garage.Garage.Read(file).Stamp != stamp;
        Read();
        StateHasChanged();
        return isOurs ? [file!] : [];
    }

    private string Called(string car) => Garage.CarTitles.FirstOrDefault(one => one.Name == car) is { Words: { } words } ? words : car;

    private string UnitOf(RoadField field) => RoadDraft.UnitOf(field.Field, Garage.Units);
}
