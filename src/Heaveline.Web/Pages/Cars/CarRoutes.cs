using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json.Nodes;
using System.Text.Json;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Cars;

/// <summary>Downloads of the car page: the file as it is saved, its figure, its numbers.</summary>
internal static class CarRoutes
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Maps the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(
            "/download/car.yaml",
            (string? car, GarageView garageView) => garageView.Garage.Read(GarageView.FileOf(car ?? "")) is { Text: { } text } file
                ? Results.File(Encoding.UTF8.GetBytes(text), "application/yaml", Path.GetFileName(file.Name))
                : Results.NotFound());
        routes.MapGet("/download/car-loads.{kind}", (string kind, string? car, GarageView garageView) => Of(
            garageView, car, CarNumbers.Of, numbers => Download.Picture(numbers.Figure!, kind, $"{car}-loads")));
        routes.MapGet(
            "/download/car-numbers.{kind}",
            (string kind, string? car, GarageView garageView) => Of(garageView, car, one => CarNumbers.WithDoubts(one), numbers => kind switch
            {
                "csv" => Download.File(Encoding.UTF8.GetBytes(Csv(numbers)), "text/csv; charset=utf-8", $"{car}-numbers", kind),
                "json" => Download.File(Encoding.UTF8.GetBytes(Json(numbers)), "application/json", $"{car}-numbers", kind),
                _ => Results.NotFound(),
            }));
    }

    /// <summary>Rows of numbers, each load state with its doubt beside it; RFC 4180.</summary>
    internal static string Csv(CarNumbers numbers)
    {
        var text = new StringBuilder();
        Line(["part", "key", "what", "unit", .. numbers.Loads.SelectMany(load => new[] { load, $"{load}, ± (2σ)" })]);
        foreach (var (heading, lines) in numbers.Parts)
        {
            foreach (var line in lines)
            {
                Line(
                [
                    heading,
                    line.Measure.Key,
                    line.Measure.Label,
                    line.Measure.Unit.Symbol,
                    .. line.Cells.SelectMany(
                        cell => cell is null ? ["", ""] : new[] { Number(cell.Value), numbers.NoDoubts is null ? Number(cell.HalfWidth) : "" }),
                ]);
            }
        }

        return text.ToString();

        void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(CsvCell.Of)).Append("\r\n");

        static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>The same numbers for machines.</summary>
    internal static string Json(CarNumbers numbers) => new JsonObject
    {
        ["car"] = numbers.Car.Name,
        ["loads"] = new JsonArray([.. numbers.Loads.Select(load => (JsonNode)JsonValue.Create(load))]),
        ["rows"] = new JsonArray([.. numbers.Parts.SelectMany(part => part.Lines).Select(line => (JsonNode)new JsonObject
        {
            ["key"] = line.Measure.Key,
            ["label"] = line.Measure.Label,
            ["unit"] = line.Measure.Unit.Symbol,
            ["values"] = new JsonArray([.. line.Cells.Select(cell => cell is null ? null : (JsonNode)JsonValue.Create(cell.Value))]),
            ["doubts"] = new JsonArray(
                [.. line.Cells.Select(cell => cell is null || numbers.NoDoubts is not null ? null : (JsonNode)JsonValue.Create(cell.HalfWidth))]),
        })]),
    }.ToJsonString(Readable);

    private static Task<IResult> Of(
        GarageView garageView, string? name, Func<Car, CarNumbers> count, Func<CarNumbers, IResult> write) => Download.Answer(() =>
    {
        if (garageView.Car(name ?? "") is not { } reading)
        {
            return Task.FromResult(Results.NotFound());
        }

        var numbers = reading.Value is { } car ? count(car) : null;
        return Task.FromResult(numbers is { Figure: not null }
            ? write(numbers)
            : Download.Refused(reading.Refusals is [var first, ..] ? $"{first.Message} {first.Advice}" : "This car cannot stand at any load state."));
    });
}
