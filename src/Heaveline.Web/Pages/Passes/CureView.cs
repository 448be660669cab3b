using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tuning;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What the page shows of the cures for a pass.</summary>
/// <param name="Answer">The answer.</param>
public sealed record CureView(CureAnswer Answer)
{
    private const int Capacity = 40;

    /// <summary>The finding.</summary>
    public string Finding { get; } =
        Answer.NotDriven is { } notDriven ? $"{Answer.Finding.Text} {notDriven.Text}" : Answer.Finding.Text;

    /// <summary>The causes: the opening, then each with its size.</summary>
    public IReadOnlyList<string> Causes { get; } = [.. Answer.Causes.All.Select(sentence => sentence.Text)];

    /// <summary>Each cure, what it does to the number that is to be less, and what else is said of it.</summary>
    public IReadOnlyList<(Cure Cure, string Change, IReadOnlyList<Sentence> More)> Cures { get; } =
        [.. Answer.Cures.Zip(Answer.Told, (cure, told) => (cure, Answer.Change(cure), (IReadOnlyList<Sentence>)[.. told.Skip(1)]))];

    /// <summary>What gets worse by each cure under every load, a table a cure.</summary>
    public IReadOnlyList<FactTable> Prices { get; } = Answer.Prices;

    /// <summary>What stands below the cures.</summary>
    public IReadOnlyList<string> Notes { get; } = [.. Answer.Cautions, .. Answer.Notes.Select(note => note.Text), .. Answer.Closing];

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<CureAsked, CureAnswer, CureView> StudyIn(StudyQueue queue) =>
        new(CureStudy.Run, answer => new CureView(answer), queue, Capacity);

    /// <summary>What is asked: cures for the car as described, under the load, over the road and at the speed of a view.</summary>
    /// <param name="view">The view.</param>
    /// <param name="aim">What is to be less.</param>
    /// <param name="garage">Where car and road are.</param>
    internal static AskedReading<CureAsked> Ask(PassView view, CureAim aim, GarageView garage)
    {
        var reading = CureStudy.Question.Read(view.State.Words, garage);
        var luggage = view.State.Values.GetValueOrDefault(Luggage.Key);
        return reading with
        {
            Asked = reading.Asked is { } asked
                ? asked with
                {
                    Aim = aim,
                    Road = view.Now.Pass.Road,
                    Car = asked.Car with { Load = Luggage.On(asked.Car.Load, asked.Car.Car, luggage) },
                }
                : null,
            Key = string.Join('\u001f', reading.Key, aim, Rounded.Text(luggage), view.State.Values.TryGetValue(PassState.Height, out var height)
                ? Rounded.Text(height)
                : ""),
        };
    }

    /// <summary>Whether a state of the page has a cure set and nothing else on the car.</summary>
    internal static bool IsSet(PassState state, Cure cure) => OnCar(state).OrderBy(one => one.Key, StringComparer.Ordinal)
        .SequenceEqual(cure.Values.Select(one => KeyValuePair.Create(one.Key, one.Value)));

    /// <summary>Whether pressing a cure lets go of something that is set on the car.</summary>
    internal static bool Loses(PassState state, Cure cure) => !IsSet(state, cure)
        && OnCar(state).Any(one => !cure.Values.TryGetValue(one.Key, out var value) || value != one.Value);

    /// <summary>The state with a cure set on the car as described; where it is set already, without it.</summary>
    internal static PassState Press(PassState state, Cure cure)
    {
        var bare = state.Values.RemoveRange(OnCar(state).Select(one => one.Key));
        return state with { Values = IsSet(state, cure) ? bare : bare.SetItems(cure.Values) };
    }

    private static ImmutableArray<KeyValuePair<string, double>> OnCar(PassState state)
    {
        string[] keys = [.. Settings.All(false).Select(setting => setting.Key)];
        return [.. state.Values.Where(one => keys.Contains(one.Key))];
    }
}
