using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;

namespace Heaveline.Web.Studying;

/// <summary>A page whose state stands in its address: what is chosen goes there, and what stands there is read anew whenever it changes.</summary>
public abstract class StudyPage : ComponentBase, IDisposable
{
    private string path = "";

    // Where the page is going: what was chosen a moment ago does not stand in the address yet.
    private string? underway;

    [Inject]
    internal GarageView GarageView { get; set; } = null!;

    [Inject]
    internal NavigationManager Addresses { get; set; } = null!;

    /// <summary>What can be chosen.</summary>
    protected abstract IReadOnlyList<Choice> Offered { get; }

    internal PageChoices Chosen { get; private set; } = null!;

    /// <summary>The name of the car in the garage.</summary>
    protected string CarName => Chosen.Given.Of(Choices.Car)!;

    protected override void OnInitialized()
    {
        path = new Uri(Addresses.Uri).AbsolutePath;
        Addresses.LocationChanged += Moved;
        Begin();
        Choose();
    }

    /// <summary>Makes ready, once, before anything is read.</summary>
    protected abstract void Begin();

    /// <summary>Reads what is chosen.</summary>
    protected abstract void Read();

    /// <summary>Does something on the page's own thread, then shows the page anew.</summary>
    protected Task OnPage(Action act) => InvokeAsync(() =>
    {
        act();
        StateHasChanged();
    });

    /// <summary>Chooses something: it goes into the address.</summary>
    /// <param name="choice">What.</param>
    /// <param name="words">The words; null or blank for the usual ones.</param>
    protected void Choose(Choice choice, string? words) => Go(new() { [choice.Name] = string.IsNullOrEmpty(words) ? null : words });

    /// <summary>Chooses several words of one choice: they go into the address one after the other.</summary>
    /// <param name="choice">What.</param>
    /// <param name="words">The words; none for the usual ones.</param>
    protected void ChooseAll(Choice choice, IReadOnlyList<string> words) =>
        Go(new() { [choice.Name] = words.Count == 0 ? null : words.ToArray() });

    /// <summary>Chooses another car; what only the former one has is as usual again.</summary>
    /// <param name="name">The car.</param>
    protected void ChooseCar(string name)
    {
        var words = Offered.Where(c => c.Kind is ChoiceKind.Load or ChoiceKind.Seat).ToDictionary(c => c.Name, _ => (object?)null);
        foreach (var key in CurrentCar.TrialKeys)
        {
            words[key] = null;
        }

        words[Choices.Car.Name] = name;
        Go(words);
    }

    /// <summary>Files of the garage have changed: what is chosen is read anew.</summary>
    /// <param name="names">Their names.</param>
    /// <returns>Those that the page shows.</returns>
    protected IReadOnlyCollection<string> Follow(IReadOnlyCollection<string> names)
    {
        var words = Chosen.Offered.SelectMany(c => Chosen.Typed.All(c)).OfType<string>().Append(CarName).ToList();
        var shown = GarageView.FilesOf(words);
        Choose();
        StateHasChanged();
        return [.. names.Where(name => shown.Contains(name) || words.Any(word => name.Contains($"/{word}/", StringComparison.Ordinal)))];
    }

    public void Dispose()
    {
        Addresses.LocationChanged -= Moved;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go: nobody looks any more.</summary>
    protected abstract void Leave();

    private void Go(Dictionary<string, object?> words)
    {
        underway = Addresses.GetUriWithQueryParameters(underway ?? Addresses.Uri, words);
        Addresses.NavigateTo(underway, replace: true);
    }

    private void Moved(object? sender, LocationChangedEventArgs e)
    {
        underway = null;
        if (new Uri(e.Location).AbsolutePath == path)
        {
            _ = OnPage(Choose);
        }
    }

    private void Choose()
    {
        Chosen = PageChoices.Of(new Uri(Addresses.Uri).Query, Offered, GarageView);
        Read();
    }
}
