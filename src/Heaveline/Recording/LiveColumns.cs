namespace Heaveline.Recording;

/// <summary>Which of a car's numbers its sliders move: each kind of movement is one column, however many numbers move by it.</summary>
internal sealed class LiveColumns
{
    private readonly LivePlace?[][] places;
    private readonly int?[] columnOf;

    // A number of the car for each column.
    private readonly List<int> first = [];

    /// <param name="own">The car's numbers as it stands.</param>
    /// <param name="places">The car at each place of each slider.</param>
    public LiveColumns(double[] own, LivePlace?[][] places)
    {
        this.places = places;
        columnOf = new int?[own.Length];
        var known = new Dictionary<long, List<int>>();
        var all = places.SelectMany(slider => slider).OfType<LivePlace>().Select(place => place.Numbers).ToArray();
        for (var k = 0; k < own.Length; k++)
        {
            var (moves, movement) = (false, 0L);
            foreach (var numbers in all)
            {
                moves |= numbers[k] != own[k];
                movement = (movement * 0x100000001b3) ^ BitConverter.DoubleToInt64Bits(numbers[k]);
            }

            if (moves)
            {
                columnOf[k] = Column(known, movement, k, all);
            }
        }
    }

    /// <summary>For a record that meets a stretch of the car's numbers, which of them are given.</summary>
    /// <param name="from">The first of the stretch.</param>
    /// <param name="to">The first behind it: what a record meets after that are no numbers of the car.</param>
    public Func<int, int?> GivenOf(int from, int to) => k => from + k < to && columnOf[from + k] is { } column ? LiveGiven.Car + column : null;

    /// <summary>The columns as a car has them.</summary>
    public double[] Values(LivePlace place) => [.. first.Select(k => place.Numbers[k])];

    /// <summary>Numbers of the car that a slider moves, one for each column.</summary>
    public IEnumerable<int> MovedBy(int slider) => first.Where(k => Moves(slider, k));

    /// <summary>A slider with the columns that it moves.</summary>
    public LiveSlider Slider(string key, int slider)
    {
        int[] moved = [.. Enumerable.Range(0, first.Count).Where(column => Moves(slider, first[column]))];
        return new(key, moved, [.. places[slider].Select(place => place is null ? null : (double[])[.. moved.Select(c => place.Numbers[first[c]])])]);
    }

    // That of a number that moves in the same way, or a new one.
    private int Column(Dictionary<long, List<int>> known, long movement, int k, double[][] all)
    {
        if (!known.TryGetValue(movement, out var alike))
        {
            known[movement] = alike = [];
        }

        foreach (var column in alike)
        {
            if (Array.TrueForAll(all, numbers => numbers[k] == numbers[first[column]]))
            {
                return column;
            }
        }

        alike.Add(first.Count);
        first.Add(k);
        return first.Count - 1;
    }

    private bool Moves(int slider, int k)
    {
        var first = places[slider].OfType<LivePlace>().FirstOrDefault();
        return Array.Exists(places[slider], place => place is not null && place.Numbers[k] != first!.Numbers[k]);
    }
}
