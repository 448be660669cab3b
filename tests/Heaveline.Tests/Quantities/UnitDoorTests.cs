using System.Reflection;
using Heaveline.Quantities;

namespace Heaveline.Tests.Quantities;

public class UnitDoorTests
{
    public static TheoryData<string, string> Doors()
    {
        var doors = new TheoryData<string, string>();
        foreach (var (name, unit) in new[]
        {
            ("Length.FromMetres", "m"), ("Length.FromMillimetres", "mm"), ("Length.FromInches", "in"), ("Mass.FromKilograms", "kg"),
            ("Mass.FromPounds", "lb"),
            ("Time.FromSeconds", "s"), ("Force.FromNewtons", "N"), ("Force.FromPoundsForce", "lbf"), ("Stiffness.FromNewtonsPerMetre", "N/m"),
            ("Stiffness.FromNewtonsPerMillimetre", "N/mm"), ("Stiffness.FromPoundsForcePerInch", "lbf/in"),
            ("DampingRate.FromNewtonSecondsPerMetre", "N s/m"),
            ("AngularStiffness.FromNewtonMetresPerRadian", "N m/rad"), ("AngularStiffness.FromNewtonMetresPerDegree", "N m/deg"),
            ("Inertia.FromKilogramSquareMetres", "kg m²"), ("Velocity.FromMetresPerSecond", "m/s"), ("Velocity.FromKilometresPerHour", "km/h"),
            ("Velocity.FromMilesPerHour", "mph"), ("Acceleration.FromMetresPerSecondSquared", "m/s²"), ("Angle.FromRadians", "rad"),
            ("Angle.FromDegrees", "deg"),
            ("AngularRate.FromRadiansPerSecond", "rad/s"), ("AngularAcceleration.FromRadiansPerSecondSquared", "rad/s²"),
            ("Frequency.FromHertz", "Hz"),
            ("Area.FromSquareMetres", "m²"), ("Area.FromSquareCentimetres", "cm²"), ("Volume.FromCubicMetres", "m³"), ("Volume.FromLitres", "L"),
            ("Pressure.FromPascals", "Pa"), ("Pressure.FromBars", "bar"), ("Density.FromKilogramsPerCubicMetre", "kg/m³"),
            ("Viscosity.FromPascalSeconds", "Pa s"),
            ("Viscosity.FromMillipascalSeconds", "mPa s"), ("Compliance.FromCubicMetresPerPascal", "m³/Pa"),
            ("Compliance.FromCubicCentimetresPerBar", "cm³/bar"),
            ("Resistance.FromPascalSecondsPerCubicMetre", "Pa s/m³"), ("Inertance.FromKilogramsPerQuarticMetre", "kg/m⁴"),
            ("RatioPerLength.FromPerMetre", "1/m"),
            ("SpatialFrequency.FromCyclesPerMetre", "cycles/m"), ("RoadDensity.FromCubicMetres", "m³"), ("Plain.FromNumber", ""),
            ("Plain.FromPercent", "%"),
        })
        {
            doors.Add(name, unit);
        }

        return doors;
    }

    [Theory, MemberData(nameof(Doors))]
    public void A_door_gives_what_the_same_number_gives_when_it_is_read_with_its_unit(string door, string unit)
    {
        var (type, method) = (door.Split('.')[0], door.Split('.')[1]);
        var dimension = typeof(Length).Assembly.GetType($"Heaveline.Quantities.{type}", throwOnError: true)!;
        var given = dimension.GetMethod(method)!.Invoke(null, [12.5])!;
        var parsed = typeof(QuantityText).GetMethod(
            nameof(QuantityText.Parse), [typeof(string)])!.MakeGenericMethod(dimension).Invoke(null, [$"12.5 {unit}".Trim()])!;
        var read = parsed.GetType().GetProperty("Amount")!.GetValue(parsed)!;
        var (asGiven, asRead) = (Si(given), Si(read));
        Assert.InRange(asGiven, asRead * (1.0 - 1e-15), asRead * (1.0 + 1e-15));
    }

    [Fact]
    public void Every_door_is_held_to_its_unit()
    {
        var all = typeof(Length).Assembly.GetExportedTypes()
            .Where(t => t.GetInterfaces().Contains(typeof(IDimension)))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.Name.StartsWith("From", StringComparison.Ordinal))
                .Select(m => $"{t.Name}.{m.Name}"))
            .Order(StringComparer.Ordinal);
        Assert.Equal(all, Doors().Select(row => (string)row.Data.Item1).Order(StringComparer.Ordinal));
    }

    private static double Si(object amount) => (double)amount.GetType().GetProperty("Si")!.GetValue(amount)!;
}
