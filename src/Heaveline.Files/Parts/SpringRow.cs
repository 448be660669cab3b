using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>A row of a sheet of springs while it is read; every cell that is wrong is refused at its place.</summary>
internal sealed class SpringRow(string file, IReadOnlyList<Cell> cells, SpringColumn[] columns, List<Refusal> refusals)
{
    private CoilPart? part;

    /// <summary>The spring; there once it was read.</summary>
    public CoilPart Part => part ?? throw new InvalidOperationException("The row was not read.");

    /// <summary>The cell of a key; the first one where there is none.</summary>
    public Cell At(SpringColumn[] of, string key) => cells[Math.Max(0, Array.FindIndex(of, column => column.Key == key))];

    /// <summary>The spring; null where a cell was refused.</summary>
    public CoilPart? Read()
    {
        var before = refusals.Count;
        var name = Text("part");
        if (name is null)
        {
            Refuse("part", "is empty; it must be a name.", "Give each spring the name that the seller calls it by.");
        }

        var (rate, fits, price, pieces) = (Positive<Stiffness>("rate"), Text("fits"), Text("price"), Text("pieces"));
        if (rate is null && refusals.Count == before)
        {
            Refuse("rate", "is empty; it must be a rate.", "Take the row out where nobody knows it.");
        }

        if (fits is not (null or "front" or "rear" or "both"))
        {
            Refuse("fits", $"is {At(columns, "fits").Shown}; it must be front, rear or both.", "Leave it empty where it fits either.");
        }

        Money? money = null;
        if (price is not null)
        {
            var read = PartWords.ReadPrice(price);
            if (read.Refusal is { } refusal)
            {
                var must = refusal.Message[(refusal.Message.LastIndexOf(';') + 1)..];
                Refuse("price", $"is {At(columns, "price").Shown};{must}", refusal.Advice);
            }

            money = read.Value with { Currency = columns.First(column => column.Key == "price").Unit };
        }

        int? count = null;
        if (pieces is not null)
        {
            count = int.TryParse(pieces, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;
            if (count is < 1 or > 16)
            {
                Refuse("pieces", $"is {At(columns, "pieces").Shown}; it must be a whole number from 1 to 16.", "Leave it empty for two.");
            }
        }

        var (free, block) = (Positive<Length>("free-length"), Positive<Length>("block-length"));
        if (free is { } longer && block is { } shorter && shorter.Si >= longer.Si)
        {
            Refuse(
                "block-length",
                $"is {At(columns, "block-length").Shown}; it must be below free-length, {At(columns, "free-length").Shown}.",
                "Measure both out of the car, without load and pressed solid.");
        }

        var (seat, stress) = (Positive<Length>("seat-diameter"), Positive<Pressure>("allowed-stress"));
        part = refusals.Count > before ? null : new CoilPart
        {
            Name = name!,
            Price = money,
            Stock = Text("stock"),
            Maker = Text("maker"),
            Only = fits switch { "front" => AxleEnd.Front, "rear" => AxleEnd.Rear, _ => null },
            Pieces = count,
            Law = CoilPartWords.Law(rate!.Value, null),
            FreeLength = free,
            BlockLength = block,
            SeatDiameter = seat,
            AllowedStress = stress,
        };
        part = part is null ? null : part with { Written = PartWords.Written(Listed()) };
        return part;
    }

    /// <summary>The row as the same spring stands in a list, each value at the place of its cell.</summary>
    public Node Listed()
    {
        var entries = columns.Zip(cells).Where(one => one.Second.Text.Length > 0 && (one.First.Key, one.Second.Text) != ("fits", "both"))
            .Select(one =>
            {
                var place = new Place(one.Second.Line, one.Second.Column, one.Second.Text.Length);
                var text = one.First.Key == PartWords.Price.Name ? one.Second.Text : one.First.Whole(one.Second.Text);
                return new Entry(one.First.Key, place, new Node(NodeKind.Scalar, $"{Part.Name} {one.First.Key}", place) { Text = text });
            });
        return new Node(NodeKind.Mapping, Part.Name, new Place(cells[0].Line, cells[0].Column, Math.Max(1, cells[0].Text.Length)))
        {
            Entries = [.. entries],
        };
    }

    private string? Text(string key) =>
        Array.FindIndex(columns, column => column.Key == key) is var at and >= 0 && cells[at].Text is { Length: > 0 } text
        ? text
        : null;

    private Amount<TDimension>? Positive<TDimension>(string key)
        where TDimension : struct, IDimension
    {
        if (Text(key) is not { } text)
        {
            return null;
        }

        var amount = columns.First(column => column.Key == key).Read<TDimension>(text, out var refusal);
        if (refusal is not null)
        {
            Refuse(key, $"is {At(columns, key).Shown}: {refusal.Message}", refusal.Advice);
        }
        else if (!(amount.Si > 0.0 && double.IsFinite(amount.Si)))
        {
            Refuse(key, $"is {At(columns, key).Shown}; it must be above 0.", "Measure it again.");
        }

        return amount;
    }

    private void Refuse(string key, string message, string advice) => refusals.Add(At(columns, key).Refuse(file, $"{key} {message}", advice));
}
