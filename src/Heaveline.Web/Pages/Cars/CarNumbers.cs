using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Models;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Cars;

/// <summary>The numbers of one car at every load state as the page lays them out, with their doubts once those are known.</summary>
public sealed record CarNumbers
{
    private CarNumbers(DescribeAnswer answer, bool hasDoubts, string? noDoubts)
    {
        (Answer, HasDoubts, NoDoubts) = (answer, hasDoubts, noDoubts);
        Figure = Models.Count > 0 ? answer.Figure(DescribeAnswer.LoadStates) : null;
    }

    /// <summary>What the study of the car says.</summary>
    public DescribeAnswer Answer { get; }

    /// <summary>The car.</summary>
    public Car Car => Answer.Asked.Car;

    /// <summary>One model per load state that the car can bear, empty first.</summary>
    public IReadOnlyList<RideModel> Models => Answer.Models;

    /// <summary>The car at its load states, with its table: what a reader takes away; null when it can bear none.</summary>
    public Figure? Figure { get; }

    /// <summary>Why there are no doubts beside the numbers; null when there are, or when they are not worked out yet.</summary>
    public string? NoDoubts { get; }

    /// <summary>Whether the doubts have been worked out.</summary>
    public bool HasDoubts { get; }

    /// <summary>What moves in its body modes, and where the car stands against the trade's rules, in sentences.</summary>
    public IEnumerable<string> RuleNotes => Answer.Sentences
        .Where(s => s.Id is DescribeNotes.LoadRuleId or DescribeNotes.SuitedSpeedId
            || s.Id.StartsWith(DescribeNotes.BodyModesId, StringComparison.Ordinal))
        .Select(s => s.Text);

    /// <summary>The numbers of a car as stated.</summary>
    public static CarNumbers Of(Car car) => new(DescribeStudy.Run(Asked(car)), hasDoubts: false, noDoubts: null);

    /// <summary>The same with doubts: two standard deviations by slopes along each source of error (JCGM 100:2008, clause 5).</summary>
    /// <param name="car">The car.</param>
    /// <param name="meanwhile">Told the numbers without their doubts, where those take their time; null for nobody.</param>
    /// <param name="stop">
    /// Stops the work, with an <see cref="OperationCanceledException"/>: the car is another by now, or nobody looks any more.
    /// </param>
    public static CarNumbers WithDoubts(Car car, Action<CarNumbers>? meanwhile = null, CancellationToken stop = default)
    {
        if (!CarDoubts.Of(car).AreStated)
        {
            return new CarNumbers(
                DescribeStudy.Run(Asked(car), new StudyRun { Cancellation = stop }),
                hasDoubts: true,
                "The file states no doubts. Write them behind the values, and each number here gets its band.");
        }

        var run = new StudyRun
        {
            Meanwhile = earlier => meanwhile?.Invoke(new CarNumbers((DescribeAnswer)earlier, hasDoubts: false, noDoubts: null)),
            Cancellation = stop,
        };
        var answer = DescribeStudy.Run(Asked(car) with { WithSlopes = true }, run);
        return new CarNumbers(answer, hasDoubts: true, answer.NoSlopes);
    }

    private static DescribeAsked Asked(Car car) => DescribeAsked.Of(car) with { LeavesOutUnbearable = true };
}
