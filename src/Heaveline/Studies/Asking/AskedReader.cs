using System.Globalization;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Drives;
using Heaveline.Parts;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>
/// From words to what is asked: every choice read by one rule, refused in one wording, all objections gathered. What was read is noted, so that equal
/// questions can be known by <see cref="Key"/>.
/// </summary>
/// <param name="given">The words.</param>
/// <param name="finder">Finds cars and roads.</param>
public sealed partial class AskedReader(Given given, IFinder finder)
{
    private readonly List<Objection> objections = [];
    private readonly List<string> notes = [];
    private readonly List<(string Choice, IReadOnlyList<InputText> Inputs)> files = [];

    /// <summary>Everything that is wrong so far.</summary>
    public IReadOnlyList<Objection> Objections => objections;

    /// <summary>Whether anything is wrong so far.</summary>
    public bool IsRefused => objections.Count > 0;

    /// <summary>All that was read so far, with the texts of cars and roads.</summary>
    public string Key => string.Join('\u001f', notes);

    /// <summary>The words, as they were given.</summary>
    public Given Given => given;

    /// <summary>Whether a name leads to a drive with what was written down about it.</summary>
    internal Func<string, bool> IsDescribed => finder.IsDescribed;

    /// <summary>Ends what takes long already while the words are read.</summary>
    public CancellationToken Stop => finder.Stop;

    /// <summary>The roads that have a short name, with what they are.</summary>
    public IReadOnlyList<(string Name, string Caption)> Roads => finder.Roads;

    /// <summary>The files of everything found so far for a choice, thing by thing, its own first.</summary>
    /// <param name="choice">A choice of cars or roads.</param>
    public IReadOnlyList<IReadOnlyList<InputText>> Inputs(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return [.. files.Where(f => f.Choice == choice.Name).Select(f => f.Inputs)];
    }

    /// <summary>Objects to a choice.</summary>
    /// <param name="choice">Name of the choice; blank for none in particular.</param>
    /// <param name="sentence">What is wrong and what there is instead.</param>
    /// <param name="isUsage">Whether it is the words that are wrong, whatever cars and roads say.</param>
    public void Object(string choice, string sentence, bool isUsage = true) => Object(new Objection(choice, sentence, isUsage) { Place = At });

    /// <summary>The reading that is being read, which an objection is about; null: none of several.</summary>
    internal ReadingPlace? At { get; set; }

    /// <summary>The words for a choice, or the usual ones; null where there are neither.</summary>
    public string? Text(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var words = given.Of(choice) ?? choice.Usual;
        RefuseMissing(choice, words is null);
        return Note(choice, words);
    }

    /// <summary>All words for a choice, in order.</summary>
    public IReadOnlyList<string> Texts(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var all = given.All(choice);
        RefuseMissing(choice, all.Count == 0);
        return [.. all.Select(words => Note(choice, words)!)];
    }

    /// <summary>Whether a tick is set.</summary>
    public bool IsTicked(Choice choice) => Note(choice, given.Of(choice)) is not null;

    /// <summary>A word of a list; null when it is none of it.</summary>
    public string? Word(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var word = Text(choice);
        if (word is not null && !choice.Words.Contains(word))
        {
            Object(choice.Name, $"'{word}' is no {choice.WordIs}; there are {string.Join(", ", choice.Words)}.");
            return null;
        }

        return word;
    }

    /// <summary>A whole number in its range; null when it is none, or none was given and none is usual.</summary>
    public int? Whole(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        if (Text(choice) is not { } words)
        {
            return null;
        }

        if (!int.TryParse(words, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            Object(choice.Name, IsWhole(words)
                ? FormattableString.Invariant($"{choice.Name} {words.Trim()}: give {choice.Range.Least} to {choice.Range.Most}.")
                : $"{choice.Name} '{words}' must be a whole number, in digits.");
            return null;
        }

        if (!(number >= choice.Range.Least && number <= choice.Range.Most))
        {
            Object(choice.Name, FormattableString.Invariant($"{choice.Name} {number}: give {choice.Range.Least} to {choice.Range.Most}."));
            return null;
        }

        return number;
    }

    /// <summary>A seed; null when it is none.</summary>
    public ulong? Seed(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var words = Text(choice) ?? "1";
        if (ulong.TryParse(words, NumberStyles.None, CultureInfo.InvariantCulture, out var seed))
        {
            return seed;
        }

        Object(choice.Name, IsWhole(words)
            ? FormattableString.Invariant($"{choice.Name} {words.Trim()}: give 0 to {ulong.MaxValue}.")
            : $"{choice.Name} '{words}' must be a whole number, in digits.");
        return null;
    }

    /// <summary>A number without a unit, in its range; null when it is none.</summary>
    /// <param name="choice">The choice, with its range.</param>
    public double? Number(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var words = Text(choice) ?? "";
        var (least, most) = choice.Range;
        if (QuantityText.Number(words) is { } value && value >= least && value <= most)
        {
            return value;
        }

        Object(choice.Name, FormattableString.Invariant($"'{words}' is no {choice.WordIs} between {least:G4} and {most:G4}."));
        return null;
    }

    /// <summary>A quantity with its unit, in SI units with its doubt; null when it is none.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="example">How it may be written ("1.5 m").</param>
    public Amount<TDimension>? Amount<TDimension>(Choice choice, string example)
        where TDimension : struct, IDimension
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Text(choice) is { } words ? Parsed<TDimension>(choice.Name, choice.Name, words, example)?.Amount : null;
    }

    /// <summary>A quantity with its unit that stands among the words for a choice, in SI units with its doubt; null when it is none.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="words">The words.</param>
    /// <param name="example">How it may be written ("1.5 m").</param>
    public Amount<TDimension>? Amount<TDimension>(Choice choice, string words, string example)
        where TDimension : struct, IDimension
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Parsed<TDimension>(choice.Name, choice.Name, words, example)?.Amount;
    }

    /// <summary>A driving speed, m/s; null when it is none.</summary>
    public double? Speed(Choice choice) => Text(choice) is { } words ? Speed(choice, words) : null;

    /// <summary>A driving speed that stands among the words for a choice, m/s; null when it is none.</summary>
    internal double? Speed(Choice choice, string words) => Speed(choice.Name, words);

    /// <summary>Speeds with commas between, m/s, each once, rising; those that are none are left out.</summary>
    public IReadOnlyList<double> Speeds(Choice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var words = CommaList.Of(Text(choice) ?? "");
        if (words.Length > choice.Range.Most)
        {
            Object(choice.Name, FormattableString.Invariant($"{choice.Name}: {words.Length} speeds are too many; give at most {choice.Range.Most}."));
            return [];
        }

        return [.. words.Select(word => Speed(choice.Name, word)).OfType<double>().Distinct().Order()];
    }

    /// <summary>Even speeds from the slowest to the fastest, m/s; empty when there are none.</summary>
    /// <param name="from">The slowest.</param>
    /// <param name="to">The fastest.</param>
    /// <param name="count">How many, at least 2.</param>
    public IReadOnlyList<double> Speeds(Choice from, Choice to, int count)
    {
        var (slowest, fastest) = (Speed(from), Speed(to));
        if (slowest is not { } first || fastest is not { } last)
        {
            return [];
        }

        if (!(last > first))
        {
            Object(to.Name, $"The slowest speed, '{Text(from)}', must be slower than the fastest, '{Text(to)}'.");
            return [];
        }

        return EvenSpeeds.Of(first, last, count);
    }

    /// <summary>The road; null when there is none.</summary>
    public Road? Road(Choice choice) => Text(choice) is { } name ? Road(choice, name) : null;

    /// <summary>A road whose name stands among the words for a choice; null when there is none.</summary>
    internal Road? Road(Choice choice, string name) => Sought(choice, finder.Road(name)).Value;

    /// <summary>The lists of parts of a choice; those that are not there are left out.</summary>
    public IReadOnlyList<PartsList> Parts(Choice choice) =>
        [.. Texts(choice).Select(name => Sought(choice, finder.Parts(name)).Value).OfType<PartsList>()];

    /// <summary>Roads with the words that they were given by, each once, or the usual ones; those that are not there are left out.</summary>
    public IReadOnlyList<(string Name, Road Road)> RoadsOf(Choice choice, IReadOnlyList<string> usual) =>
        [.. (given.All(choice) is { Count: > 0 } all ? all : usual).Distinct()
            .Select(name => (Note(choice, name)!, Sought(choice, finder.Road(name)).Value)).Where(r => r.Value is not null)!];

    /// <summary>The log of a drive; null when there is none.</summary>
    /// <param name="choice">The choice of its files.</param>
    /// <param name="overrulings">Decisions of the reading that are taken otherwise; null: none.</param>
    public Log? Log(Choice choice, IReadOnlyList<Overruling>? overrulings = null)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Sought(choice, finder.Log(Texts(choice), overrulings ?? [])).Value;
    }

    /// <summary>Recorded drives of a choice, their logs unread; those that are not there are left out.</summary>
    public IReadOnlyList<RecordedDrive> Drives(Choice choice) =>
        [.. Texts(choice).Select(name => Sought(choice, finder.Drive(name)).Value).OfType<RecordedDrive>()];

    /// <summary>What the finder finds by a name that was given for a choice; null when it is not there.</summary>
    internal T? Of<T>(Choice choice, Func<IFinder, Found<T>> find)
        where T : class => Sought(choice, find(finder)).Value;

    /// <summary>The class of a random road; null when there is none.</summary>
    public RoadClass? Class(Choice choice) => Class(choice, Text(choice) ?? "");

    /// <summary>The class of a letter; null when there is none.</summary>
    /// <param name="choice">The choice that the letter was given for.</param>
    /// <param name="letter">A to H, large or small.</param>
    public RoadClass? Class(Choice choice, string letter)
    {
        ArgumentNullException.ThrowIfNull(choice);
        if (RoadClass.All.FirstOrDefault(c => string.Equals(c.Letter.ToString(), letter, StringComparison.OrdinalIgnoreCase)) is { } found)
        {
            return found;
        }

        Object(choice.Name, $"'{letter}' is no road class; there are A to H, A the smoothest.");
        return null;
    }

    /// <summary>The car, whatever its load; null when there is none.</summary>
    public Car? Car(Choice choice) => Text(choice) is { } name ? Sought(choice, finder.Car(name)).Value : null;

    /// <summary>The car under its load; null when there is none.</summary>
    /// <param name="car">The car's choice.</param>
    /// <param name="load">The load's choice.</param>
    public LoadedCar? Car(Choice car, Choice load) => Cars(car, load) is [var one] ? one : null;

    /// <summary>The cars, each under its load of the name; those that are not there are left out. Cars of one name are told apart.</summary>
    public IReadOnlyList<LoadedCar> Cars(Choice cars, Choice load) => [.. Loaded(cars, load).Select(one => one.Car)];

    /// <summary>The same, each with the texts that it was read from.</summary>
    internal List<(LoadedCar Car, IReadOnlyList<InputText> Inputs)> Loaded(Choice cars, Choice load)
    {
        ArgumentNullException.ThrowIfNull(cars);
        var names = given.All(cars);
        if (!(names.Count >= cars.Range.Least && names.Count <= cars.Range.Most))
        {
            var wanted = cars.Range.Most > names.Count ? $"at least {Cars(cars.Range.Least)}" : $"at most {Cars(cars.Range.Most)}";
            Object(cars.Name, names.Count == 0 && cars.Range.Least <= 1.0 ? "No car is chosen." : $"{wanted} must be given.");
        }

        List<Found<Car>> found = [.. names.Select(name => Sought(cars, finder.Car(name))).Where(f => f.Value is not null)];
        var loaded = found.Select(f => (Found: f, Load: Load(load, f.Value!))).Where(f => f.Load is not null).ToList();
        var apart = NamesApart.Of([.. loaded.Select(f => (f.Found.Value!.Name, f.Found.ShortName))]);
        return [.. loaded.Select((f, i) => (new LoadedCar(apart[i], f.Found.Value!, f.Load!), f.Found.Inputs))];
    }

    /// <summary>A load state of a car; null when it has none so named.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="car">The car.</param>
    public LoadState? Load(Choice choice, Car car)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(car);
        var name = given.Of(choice);
        var load = name is not null ? LoadedCar.LoadNamed(car, name)
            : choice.FirstOfCar ? LoadedCar.UsualLoad(car) : LoadState.Reference;
        if (load is null)
        {
            Object(choice.Name, LoadedCar.NoLoad(car, name!), isUsage: false);
        }

        Note(choice, load?.Name);
        return load;
    }

    /// <summary>A seat of a car; null when it has none so named, or none is asked for.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="car">The car.</param>
    public Seat? Seat(Choice choice, Car car)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(car);
        var name = given.Of(choice);
        var seat = name is not null ? car.Seats.FirstOrDefault(s => s.Name == name) : choice.FirstOfCar && car.Seats.Count > 0 ? car.Seats[0] : null;
        if (name is not null && seat is null)
        {
            Object(choice.Name, $"'{name}' is no seat of {car.Name}; it has: {string.Join(", ", car.Seats.Select(s => s.Name))}.", isUsage: false);
        }

        Note(choice, seat?.Name);
        return seat;
    }

    private double? Speed(string choice, string words)
    {
        if (Parsed<Velocity>(choice, "speed", words, "40 km/h") is not { Amount: { Si: var speed, Doubt: var doubt }, Unit: var unit })
        {
            return null;
        }

        if (!doubt.IsStated && speed is >= DrivingSpeed.Slowest and <= DrivingSpeed.Fastest)
        {
            return speed;
        }

        Object(choice, doubt.IsStated ? $"speed '{words}': it has a doubt, and what is driven is driven exactly so fast. Leave the doubt out."
            : $"speed '{words}': it must be {DrivingSpeed.LimitsIn(unit)}. {DrivingSpeed.AdviceIn(unit)}", isUsage: doubt.IsStated);
        return null;
    }

    private Parsed<TDimension>? Parsed<TDimension>(string choice, string what, string words, string example)
        where TDimension : struct, IDimension
    {
        var unit = example.Split(' ')[^1];
        var parsed = QuantityText.Parse<TDimension>(words, unit);
        if (parsed.IsRead)
        {
            return parsed;
        }

        var write = parsed.Refusal!.Advice.Contains(unit, StringComparison.Ordinal) ? "" : $" Write it as {example}.";
        Object(choice, $"{what} '{words}': {parsed.Refusal.Message} {parsed.Refusal.Advice}{write}");
        return null;
    }

    private Found<T> Sought<T>(Choice choice, Found<T> found)
        where T : class
    {
        notes.AddRange([choice.Name, found.Name, .. found.Texts]);
        files.Add((choice.Name, found.Inputs));
        if (found.Value is null)
        {
            Object(new Objection(choice.Name, found.Refusal, IsUsage: false) { IsMissing = found.IsMissing });
        }

        return found;
    }

    private void RefuseMissing(Choice choice, bool isMissing)
    {
        if (isMissing && choice.IsNeeded)
        {
            Object(choice.Name, $"{choice.Name} must be given: {choice.Says}");
        }
    }

    private string? Note(Choice choice, string? words)
    {
        notes.Add($"{choice.Name}={words}");
        return words;
    }

    // However many digits it has.
    private static bool IsWhole(string words) =>
        words.Trim() is { Length: > 0 } trimmed && trimmed.AsSpan(trimmed[0] is '-' or '+' ? 1 : 0) is { Length: > 0 } digits
        && !digits.ContainsAnyExceptInRange('0', '9');

    private static string Cars(double count) => count == 1.0 ? "one car" : FormattableString.Invariant($"{count} cars");
}
