using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Responses;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Describing;

/// <summary>What a reader takes away from the car page: the file as it is saved, its figure, its numbers.</summary>
internal static class CarTakings
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Maps the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/take/car.yaml", (string? car, Shelf shelf) => shelf.Garage.Read(Shelf.FileOf(car ?? "")) is { Text: { } text } file
            ? Results.File(Encoding.UTF8.GetBytes(text), "application/yaml", Path.GetFileName(file.Name))
            : Results.NotFound());
        routes.MapGet("/take/car-loads.{kind}", (string kind, string? car, Shelf shelf) => Of(shelf, car, numbers => kind switch
        {
            "svg" => Results.File(Svg.Of(numbers.Figure!), "image/svg+xml", Named(car, "loads", kind)),
            "png" => Results.File(Png.Of(numbers.Figure!), "image/png", Named(car, "loads", kind)),
            "pdf" => Results.File(Pdf.Of(numbers.Figure!), "application/pdf", Named(car, "loads", kind)),
            _ => Results.NotFound(),
        }));
        routes.MapGet("/take/car-numbers.{kind}", (string kind, string? car, Shelf shelf) => Of(shelf, car, numbers => kind switch
        {
            "csv" => Results.File(Encoding.UTF8.GetBytes(Csv(numbers.WithDoubts())), "text/csv", Named(car, "numbers", kind)),
            "json" => Results.File(Encoding.UTF8.GetBytes(Json(numbers.WithDoubts())), "application/json", Named(car, "numbers", kind)),
            _ => Results.NotFound(),
        }));
    }

    /// <summary>Rows of numbers, each load state with its doubt beside it; RFC 4180.</summary>
    internal static string Csv(CarNumbers numbers)
    {
        var text = new StringBuilder();
        Line(["part", "key", "what", "unit", .. numbers.Loads.SelectMany(load => new[] { load, $"{load}, ± (2 s)" })]);
        foreach (var (heading, lines) in numbers.Parts)
        {
            foreach (var line in lines)
            {
                Line([heading, line.Row.Key, line.Row.Label, line.Row.Unit, .. line.Cells.SelectMany(cell => cell is null ? ["", ""] : new[] { Number(cell.Value), numbers.NoDoubts is null ? Number(cell.HalfWidth) : "" })]);
            }
        }

        return text.ToString();

        void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");

        static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

        // A cell that a spreadsheet would take for a formula begins with a text mark (OWASP, CSV injection).
        static string Quoted(string cell)
        {
            var safe = cell.Length > 0 && "=+@\t\r".Contains(cell[0], StringComparison.Ordinal) ? "'" + cell : cell;
            return safe.AsSpan().IndexOfAny("\",\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
        }
    }

    /// <summary>The same numbers for machines.</summary>
    internal static string Json(CarNumbers numbers) => new JsonObject
    {
        ["car"] = numbers.Car.Name,
        ["loads"] = new JsonArray([.. numbers.Loads.Select(load => (JsonNode)JsonValue.Create(load))]),
        ["rows"] = new JsonArray([.. numbers.Parts.SelectMany(part => part.Lines).Select(line => (JsonNode)new JsonObject
        {
            ["key"] = line.Row.Key,
            ["label"] = line.Row.Label,
            ["unit"] = line.Row.Unit,
            ["values"] = new JsonArray([.. line.Cells.Select(cell => cell is null ? null : (JsonNode)JsonValue.Create(cell.Value))]),
            ["doubts"] = new JsonArray([.. line.Cells.Select(cell => cell is null || numbers.NoDoubts is not null ? null : (JsonNode)JsonValue.Create(cell.HalfWidth))]),
        })]),
    }.ToJsonString(Readable);

    private static IResult Of(Shelf shelf, string? name, Func<CarNumbers, IResult> take)
    {
        if (shelf.Car(name ?? "") is not { } reading)
        {
            return Results.NotFound();
        }

        try
        {
            var numbers = reading.Car is { } car ? CarNumbers.Of(car) : null;
            return numbers is { Figure: not null } ? take(numbers) : Refused(reading.Refusals is [var first, ..] ? $"{first.Message} {first.Advice}" : "This car cannot stand at any load state.");
        }
        catch (Exception e) when (e is RefusedValueException or RunFailedException)
        {
            return Refused(e.Message);
        }
    }

    private static IResult Refused(string words) => Results.Text(words, "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);

    private static string Named(string? car, string what, string kind) => $"{(car ?? "").Replace('/', '-')}-{what}.{kind}";
}
