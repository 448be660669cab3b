using System.Text;
using Heaveline.Files.Garages;

namespace Heaveline.Ordeal;

/// <summary>
/// A garage of its own in which a car with a variant is renamed, taken out and put back over and over, until the program is killed; and what must be
/// true of it then: no text is lost or torn, and the variant is never there without the car that it changes.
/// </summary>
internal static class Upkeep
{
    private const string Variant = "soft.yaml";
    private static readonly string[] Names = ["lark.yaml", "wren.yaml"];

    /// <summary>Folder of that garage.</summary>
    public static string GarageIn(string folder) => Path.Combine(folder, "upkeep");

    /// <summary>Works until it is killed.</summary>
    /// <param name="folder">Where the garage lies.</param>
    /// <param name="chance">What is done next.</param>
    public static void Work(string folder, Random chance)
    {
        Directory.CreateDirectory(GarageIn(folder));
        var garage = new Garage(GarageIn(folder));
        Mend(garage);
        while (true)
        {
            var name = Names.Single(one => IsThere(garage, one));
            if (chance.Next(2) == 0)
            {
                Done(garage.Upkeep.Rename(name, null, Names.Single(one => one != name), Stamp(garage, name)));
            }
            else
            {
                var taken = garage.Upkeep.TakeOut([.. garage.Upkeep.WithVariants(name).Select(one => (one, Stamp(garage, one)))]);
                Done(taken);
                Done(garage.Upkeep.PutBack(taken.Kept));
            }

            Console.WriteLine("written");
        }
    }

    /// <summary>What is wrong with what a killed one left.</summary>
    /// <param name="folder">Where the garage lies.</param>
    public static IEnumerable<string> Faults(string folder)
    {
        if (!Directory.Exists(GarageIn(folder)))
        {
            yield break;
        }

        var garage = new Garage(GarageIn(folder));
        var began = Everywhere(garage, Variant).Any();
        foreach (var (name, bytes) in Names.Append(Variant).SelectMany(name => Everywhere(garage, name).Select(bytes => (name, bytes))))
        {
            var isWhole = name == Variant ? Names.Any(of => bytes.AsSpan().SequenceEqual(Text(of))) : Contents.NumberOfCar(bytes) == 1;
            if (!isWhole)
            {
                yield return $"{name} of the upkeep is torn";
            }
        }

        if (began && !Names.Any(name => Everywhere(garage, name).Any()))
        {
            yield return "the car of the upkeep is gone";
        }

        if (garage.Read(Variant).Text is { } text && !Names.Any(name => IsThere(garage, name) && Encoding.UTF8.GetString(Text(name)) == text))
        {
            yield return "the variant of the upkeep is there without its car";
        }
    }

    // One car and its variant, whatever was under way when the one before was killed.
    private static void Mend(Garage garage)
    {
        if (!Names.Any(name => IsThere(garage, name)))
        {
            var gone = garage.Upkeep.TakenOut.FirstOrDefault(one => Names.Contains(one.Version.Name));
            Done(gone is null
                ? new UpkeepOutcome { End = garage.Save(Names[0], Contents.Car(1), null).End }
                : garage.Upkeep.PutBack([gone.Version]));
        }

        if (!IsThere(garage, Variant))
        {
            var gone = garage.Upkeep.TakenOut.FirstOrDefault(one => one.Version.Name == Variant);
            Done(gone is null
                ? new UpkeepOutcome { End = garage.Save(Variant, Encoding.UTF8.GetString(Text(Names.Single(one => IsThere(garage, one)))), null).End }
                : garage.Upkeep.PutBack([gone.Version]));
        }

        // A car under both names: the variant says which one counts.
        foreach (var name in Names.Where(name => IsThere(garage, name) && garage.Upkeep.NamedBy(name).Count == 0).ToList())
        {
            Done(garage.Upkeep.TakeOut([(name, Stamp(garage, name))]));
        }
    }

    private static IEnumerable<byte[]> Everywhere(Garage garage, string name)
    {
        var place = Path.Combine(garage.Folder, name);
        var earlier = Path.Combine(garage.Folder, "earlier");
        string[] kept = Directory.Exists(earlier) ? Directory.GetFiles(earlier, $"{Path.GetFileNameWithoutExtension(name)}.*.yaml") : [];
        return (File.Exists(place) ? kept.Prepend(place) : kept).Select(File.ReadAllBytes);
    }

    private static byte[] Text(string of) => Encoding.UTF8.GetBytes($"variant: soft\nof: {of}\nchange: {{wheelbase: 2.60 m}}\n");

    private static bool IsThere(Garage garage, string name) => File.Exists(Path.Combine(garage.Folder, name));

    private static Stamp Stamp(Garage garage, string name) => garage.Read(name).Stamp!.Value;

    private static void Done(UpkeepOutcome outcome)
    {
        if (!outcome.IsDone)
        {
            throw new InvalidOperationException($"Not done: {outcome.Words}");
        }
    }
}
