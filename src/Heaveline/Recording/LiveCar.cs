namespace Heaveline.Recording;

/// <summary>
/// A car whose step and balance are recorded so that its sliders' numbers are given from outside: whoever has it moves it without asking again. What
/// a slider moves is not taken for straight: every place has the numbers that the car itself has there.
/// </summary>
internal sealed class LiveCar
{
    // Numbers that several sliders move are products of what each does. Rounding of a product and a quotient.
    private const double Same = 1e-14;

    private LiveCar(
        StepRecord step, TrimRecord trim, LiveNumbers? further, double[] numbers, IReadOnlyList<LiveSlider> sliders, double longestStep) =>
        (Step, Trim, Further, Numbers, Sliders, LongestStep) = (step, trim, further, numbers, sliders, longestStep);

    public StepRecord Step { get; }

    public TrimRecord Trim { get; }

    /// <summary>What is made of its samples; null where nothing is asked for.</summary>
    public LiveNumbers? Further { get; }

    /// <summary>The car's own numbers as it stands, those that any slider moves.</summary>
    public double[] Numbers { get; }

    /// <summary>The sliders that it follows; the others it does not.</summary>
    public IReadOnlyList<LiveSlider> Sliders { get; }

    /// <summary>The longest step that does wherever the sliders stand, s.</summary>
    public double LongestStep { get; }

    /// <summary>A car and its sliders; null where as it stands it has no such record.</summary>
    /// <param name="asked">What it is to follow.</param>
    /// <param name="further">What is made of its samples; null for nothing.</param>
    public static LiveCar? Of(LiveAsked asked, ILiveNumbers? further = null)
    {
        var nowhere = new int?[asked.Sliders.Count];
        if (asked.At(nowhere) is not { } basic || LivePlace.Of(basic.Car, basic.Load, further) is not { } own)
        {
            return null;
        }

        LivePlace? Placed(int?[] at) => asked.At(at) is { } there ? LivePlace.Of(there.Car, there.Load, further, own) : null;
        var places = new LivePlace?[asked.Sliders.Count][];
        for (var s = 0; s < places.Length; s++)
        {
            places[s] = new LivePlace?[asked.Sliders[s].Places];
            for (var k = 0; k < places[s].Length; k++)
            {
                places[s][k] = Placed([.. nowhere.Select((_, other) => other == s ? k : (int?)null)]);
            }
        }

        var columns = new LiveColumns(own.Numbers, places);
        var followed = Enumerable.Range(0, places.Length).Where(s => columns.MovedBy(s).Any()).ToList();
        followed.RemoveAll(s => followed.Exists(other => other != s && !AreProducts(Placed, own, columns, places, s, other)));
        var step = StepRecording.Of(own.Standing, columns.GivenOf(0, own.StepNumbers), own.Signals);
        var trim = TrimRecord.Of(own.Car, own.Still, columns.GivenOf(own.StepNumbers, own.TrimNumbers));
        var numbers = columns.Values(own);
        return new LiveCar(
            step,
            trim,
            further is null ? null : Noted(further, own, columns.GivenOf(own.TrimNumbers, own.Numbers.Length), LiveGiven.Car + numbers.Length),
            numbers,
            [.. followed.Select(s => columns.Slider(asked.Sliders[s].Key, s))],
            Shortest(Placed, own, places, followed));
    }

    /// <summary>What is given to the records at some places of the sliders, the trim and the position left open.</summary>
    /// <param name="at">The place of each slider; null: as it stands.</param>
    public double[] Given(IReadOnlyList<int?> at)
    {
        double[] given = [.. new double[LiveGiven.Car], .. Numbers];
        for (var s = 0; s < Sliders.Count; s++)
        {
            var slider = Sliders[s];
            for (var k = 0; at[s] is { } place && k < slider.Columns.Count; k++)
            {
                var column = slider.Columns[k];
                var (row, own) = (slider.Rows[place]![k], Numbers[column]);
                ref var value = ref given[LiveGiven.Car + column];
                value = value == own ? row : value * (row / own);
            }
        }

        return given;
    }

    private static LiveNumbers Noted(ILiveNumbers further, LivePlace own, Func<int, int?> given, int answers)
    {
        var record = new Record(given);
        using var writing = record.Begin();
        return further.Note(own.Model, answers) with { Record = record };
    }

    // What both of two sliders move must be what the one does times what the other does, at all their ends.
    private static bool AreProducts(
        Func<int?[], LivePlace?> placed, LivePlace own, LiveColumns columns, LivePlace?[][] places, int one, int other)
    {
        var both = columns.MovedBy(one).Intersect(columns.MovedBy(other)).ToList();
        if (both.Count == 0)
        {
            return true;
        }

        foreach (var (a, b) in new[] { (0, 0), (0, 1), (1, 0), (1, 1) })
        {
            var (i, j) = (a * (places[one].Length - 1), b * (places[other].Length - 1));
            var at = new int?[places.Length];
            (at[one], at[other]) = (i, j);
            if (places[one][i] is not { } first || places[other][j] is not { } second || placed(at) is not { } together)
            {
                return false;
            }

            foreach (var k in both)
            {
                var expected = first.Numbers[k] * (second.Numbers[k] / own.Numbers[k]);
                if (!(Math.Abs(expected - together.Numbers[k]) <= Same * Math.Abs(together.Numbers[k])))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // Each slider where it asks for the shortest step, all of them together.
    private static double Shortest(Func<int?[], LivePlace?> placed, LivePlace own, LivePlace?[][] places, List<int> followed)
    {
        var at = new int?[places.Length];
        var shortest = own.LongestStep;
        foreach (var s in followed)
        {
            for (var k = 0; k < places[s].Length; k++)
            {
                if (places[s][k] is { } place && place.LongestStep < (at[s] is { } best ? places[s][best]!.LongestStep : own.LongestStep))
                {
                    at[s] = k;
                }
            }

            shortest = at[s] is { } worst ? Math.Min(shortest, places[s][worst]!.LongestStep) : shortest;
        }

        return Math.Min(shortest, placed(at)?.LongestStep ?? shortest);
    }
}
