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
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var all = places.SelectMany(slider => slider).OfType<LivePlace>().Select(place => place.Numbers).ToArray();
        for (var k = 0; k < own.Length; k++)
        {
            if (Array.Exists(all, numbers => numbers[k] != own[k]))
            {
                var movement = string.Join(' ', all.Select(numbers => BitConverter.DoubleToInt64Bits(numbers[k])));
                if (!known.TryGetValue(movement, out var column))
                {
                    known[movement] = column = first.Count;
                    first.Add(k);
                }

                columnOf[k] = column;
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

    private bool Moves(int slider, int k)
    {
        var first = places[slider].OfType<LivePlace>().FirstOrDefault();
        return Array.Exists(places[slider], place => place is not null && place.Numbers[k] != first!.Numbers[k]);
    }
}
