using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Cars;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Cars;

/// <summary>Downloads of the car page: the file as it is saved, its figure, its numbers.</summary>
internal static class CarRoutes
{
    /// <summary>Maps the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(
            "/download/car.yaml",
            (string? car, GarageView garageView) => garageView.Garage.Read(GarageView.FileOf(car ?? "")) is { Text: { } text } file
                ? Results.File(Encoding.UTF8.GetBytes(text), "application/yaml", Path.GetFileName(file.Name))
                : Results.NotFound());
        routes.MapGet("/download/car-loads.{kind}", (string kind, string? car, GarageView garageView) => Of(
            garageView, car, CarNumbers.Of, numbers => Download.Picture(numbers.Figure!.In(garageView.Units), kind, $"{car}-loads")));
        routes.MapGet(
            "/download/car-numbers.{kind}",
            (string kind, string? car, GarageView garageView, ServeOptions options) => Of(
                garageView,
                car,
                one => CarNumbers.WithDoubts(one),
                numbers => Download.Of(numbers.Answer, DescribeStudy.Question.Word, options.Version, null, kind, $"{car}-numbers")));
    }

    private static Task<IResult> Of(
        GarageView garageView, string? name, Func<Car, CarNumbers> count, Func<CarNumbers, IResult> write) => Download.Answer(() =>
    {
        if (garageView.Car(name ?? "") is not { } reading)
        {
            return Task.FromResult(Download.Missing(garageView.Found(name ?? "", null).Refusal));
        }

        var numbers = reading.Value is { } car ? count(car) : null;
        return Task.FromResult(numbers is { Figure: not null }
            ? write(numbers)
            : Download.Refused(reading.Refusals is [var first, ..] ? $"{first.Message} {first.Advice}" : "This car cannot stand at any load state."));
    });
}
