using Heaveline.Answers;
using Heaveline.Drives.Planning;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>What cable ties say, in words.</summary>
internal static class TiesWords
{
    /// <summary>What the intervals are of.</summary>
    public const string Meaning =
        "Intervals are nine cases of ten for a car that moves as this model does, within the doubts of its file and of the readings; no car whose "
        + "dampers were measured on a rig has tested them yet.";

    /// <summary>One line for the end of a printout.</summary>
    public const string Safety =
        "Cross obstacles off public roads, or as traffic and law allow; read and set ties with the car on its wheels, wheels chocked and engine off: "
        + "never reach under a car held by a jack.";

    // As a sheet asks for.
    private const int FewestSpeeds = 3;

    // What rounds to nothing is not said.
    private const double LeastSaid = 0.5e-3;

    private static string Limits =>
        $"every tyre keeps {Numeral.Of(In.Percent.Of(PlankWish.LeastLoad), 0)} % of its load at rest, tried 5 % faster too, "
        + $"and no faster than {Speed(PlankWish.Fastest)} (common practice, no source)";

    /// <summary>What was read of what.</summary>
    public static string Head(TiesAsked asked)
    {
        var speeds = asked.Readings.Passes.Select(p => p.Speed.Si).Distinct().Order().Select(v => Numeral.Of(In.KilometresPerHour.Of(v), "0.#"));
        var passes = asked.Readings.Passes.Length;
        return $"{asked.Car.Car.Name}, {asked.Car.Load.Name}, over {asked.Road.Name}: {Count(asked.Readings.Count, "tie")} of "
            + $"{Count(passes, "pass", "es")} at {string.Join(", ", speeds)} km/h.";
    }

    /// <summary>The sentences: what is said first, then what is not and why, then what would tell.</summary>
    public static IEnumerable<Sentence> Of(TieFit fit)
    {
        if (!fit.IsBelieved)
        {
            yield return new("ties-misfit", Misfit(fit));
            yield break;
        }

        foreach (var estimate in fit.Estimates.Where(e => e.IsSaid))
        {
            yield return new($"ties-{TiesTable.Of(estimate).Key}", Said(estimate));
        }

        foreach (var silent in NotSaid(fit).Distinct())
        {
            yield return new("ties-not-said", silent);
        }

        if (fit.Advice is { } more)
        {
            var open = fit.Estimates.Single(e => e.Number == more.Number && e.End == more.End);
            yield return new(
                "ties-advice",
                $"Most would be told by one pass more at {Numeral.Of(In.KilometresPerHour.Of(more.Speed), 0)} km/h with all ties read: "
                + $"{Numeral.Of(In.Percent.Of(more.Learned), 0)} % of the doubt of the {Name(open)} would then be gone, and not "
                + $"{Numeral.Of(In.Percent.Of(open.Learned), 0)} %."
                + (more.IntoStop >= LeastSaid ? $" A wheel goes {Millimetres(more.IntoStop)} into its stops in it." : ""));
        }
        else if (fit.Estimates.Any(e => e.Refusal is TieRefusal.Traded or TieRefusal.NotLearned or TieRefusal.NoContact))
        {
            yield return new("ties-advice", fit.MayBeCrossed
                ? $"No single pass more over this obstacle would tell much of the rest at a speed that may be advised: {Limits}. "
                    + "Try a longer one."
                : $"No pass more over this obstacle is advised: at none of the speeds from 5 km/h on is it so that {Limits}. "
                    + "Try a lower or a longer one.");
        }
    }

    /// <summary>Whether too few speeds were driven, which of the crossings nobody should be sent over again, and which pressed a stop.</summary>
    public static IEnumerable<string> Cautions(TieFit fit)
    {
        if (fit.Driven.Length < FewestSpeeds)
        {
            yield return $"Ties were read at {Count(fit.Driven.Length, "speed")} only: a slip of a reading, a speed or the obstacle hardly shows so, "
                + "nor what damping, friction and stops each do. Cross the obstacle at three speeds or more.";
        }

        var past = fit.Driven.Where(c => !c.IsWithin).ToList();
        if (past.Count > 0)
        {
            var said = past.Select(c => $"at {Speed(c.Speed)} "
                + (c.Bears ? "" : $"a tyre keeps {Numeral.Of(In.Percent.Of(c.LeastLoad), 0)} % of its load at rest")
                + (c.IsSlowEnough ? "" : $"{(c.Bears ? "" : ", and ")}it is faster than {Speed(PlankWish.Fastest)}"));
            yield return $"Do not drive so again: {string.Join("; ", said)}. Advised is a pass only where {Limits}.";
        }

        if (fit.Driven.Where(c => c.IntoStop >= LeastSaid).ToList() is { Count: > 0 } pressed)
        {
            yield return "Stops are pressed, by the car file or the fit at up to 5 % more speed: "
                + string.Join(", ", pressed.Select(c => $"{Millimetres(c.IntoStop)} at {Speed(c.Speed)}")) + ".";
        }
    }

    /// <summary>Why a number is not said, a word for machines.</summary>
    public static string Why(TieRefusal refusal) => refusal switch
    {
        TieRefusal.Misfit => "misfit",
        TieRefusal.NoTie => "no-tie",
        TieRefusal.NoContact => "no-contact",
        TieRefusal.Traded => "traded",
        TieRefusal.NotLearned => "not-learned",
        _ => "",
    };

    private static string Misfit(TieFit fit)
    {
        var worst = fit.Matches.MaxBy(m => Math.Abs(m.Miss))!;
        var unit = worst.IsSwings ? In.Hertz : In.Millimetres;
        string Shown(double si) => $"{Numeral.Of(unit.Of(si), worst.IsSwings ? 2 : 0)} {unit.Symbol}";
        var chance = fit.Chance >= 0.0005 ? $"in {Numeral.Of(In.Percent.Of(fit.Chance), "0.##")} % of cases" : "practically never";
        return $"Nothing is said: this car on this obstacle would show such readings {chance}. Farthest off is the {worst.Words}, read as "
            + $"{Shown(worst.Read)} where the nearest such car shows {Shown(worst.ByFit)}. "
            + (fit.FitsSwapped
                ? "With front and rear exchanged they fit: were the axles mixed up?"
                : "Look again at the obstacle's size, the load, the speeds, and how far the dampers move with their wheels.");
    }

    private static string Said(TieEstimate e)
    {
        var end = CornerNames.Of(e.End);
        string Off(double factor) => Numeral.Of(In.Percent.Of(Math.Abs(1.0 - factor)), 0);
        string Whole(double value) => Numeral.Of(TiesTable.Of(e).Unit.Of(value), 0);
        return e.Number switch
        {
            TieNumber.Damping when e.High < 1.0 =>
                $"The {end} dampers act {Off(e.Value)} % weaker than the car file says ({Off(e.High)} to {Off(e.Low)} %).",
            TieNumber.Damping when e.Low > 1.0 =>
                $"The {end} dampers act {Off(e.Value)} % stronger than the car file says ({Off(e.Low)} to {Off(e.High)} %).",
            TieNumber.Damping => $"The {end} dampers may act as the car file says: {Whole(e.Low)} to {Whole(e.High)} % of it.",
            TieNumber.Friction =>
                $"Friction at a {end} wheel is {Whole(e.Value)} N ({Whole(e.Low)} to {Whole(e.High)} N); the car file says {Whole(e.File)} N.",
            TieNumber.BumpStop =>
                $"The {end} bump stop touches after {Whole(e.Value)} mm of bump ({Whole(e.Low)} to {Whole(e.High)} mm); the car file says "
                + $"{Whole(e.File)} mm.",
            _ when e.High < 1.0 => $"The {end} springs are {Off(e.Value)} % softer than the car file says ({Off(e.High)} to {Off(e.Low)} %).",
            _ when e.Low > 1.0 => $"The {end} springs are {Off(e.Value)} % stiffer than the car file says ({Off(e.Low)} to {Off(e.High)} %).",
            _ => $"The {end} springs may be as the car file says: {Whole(e.Low)} to {Whole(e.High)} % of it.",
        };
    }

    private static IEnumerable<string> NotSaid(TieFit fit)
    {
        for (var i = 0; i < fit.Estimates.Length; i++)
        {
            var e = fit.Estimates[i];
            var end = CornerNames.Of(e.End);
            switch (e.Refusal)
            {
                case TieRefusal.NoTie:
                    yield return $"No {end} tie was read: nothing is said of the {end} dampers, friction and stops.";
                    break;
                case TieRefusal.NoContact:
                    yield return $"No reading came to the {end} bump stop: where it touches is not said.";
                    break;
                case TieRefusal.Traded:
                    yield return Traded(fit, i);
                    break;
                case TieRefusal.NotLearned:
                    yield return $"The {Name(e)} is not said: the readings take away {Numeral.Of(In.Percent.Of(e.Learned), 0)} % of its doubt, "
                        + "and it is said from half on.";
                    break;
                default:
                    break;
            }
        }
    }

    // Both numbers of a pair are named in one sentence, whichever of them is not said.
    private static string Traded(TieFit fit, int i)
    {
        var e = fit.Estimates[i];
        var other = Enumerable.Range(0, fit.Estimates.Length).Where(j => j != i && fit.Estimates[j].End == e.End)
            .MaxBy(j => Math.Abs(fit.Correlations[i][j]));
        if (fit.Estimates[other].IsSaid)
        {
            return $"The {Name(e)} is not said: what it changes looks much like a change of the {Short(fit.Estimates[other])}, "
                + "whose interval allows for it.";
        }

        var (first, second) = i < other ? (i, other) : (other, i);
        return $"{Count(fit.Matches.Length, "reading")} cannot tell the {Name(fit.Estimates[first])} from the {Short(fit.Estimates[second])}: "
            + "more of one and less of the other show nearly the same.";
    }

    private static string Speed(double speed) => $"{Numeral.Of(In.KilometresPerHour.Of(speed), "0.#")} km/h";

    private static string Millimetres(double length) => $"{Numeral.Of(In.Millimetres.Of(length), 0)} mm";

    private static string Name(TieEstimate e) => $"{CornerNames.Of(e.End)} {Short(e)}";

    private static string Short(TieEstimate e) => e.Number switch
    {
        TieNumber.Damping => "damping",
        TieNumber.Friction => "friction",
        TieNumber.BumpStop => "bump stop",
        _ => "spring rate",
    };

    private static string Count(int number, string one, string plural = "s") =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number} {one}{(number == 1 ? "" : plural)}");
}
