using Heaveline.Files.Drives;

namespace Heaveline.Tests.Files.Drives;

public class DriveFileTests
{
    private const string Full =
        """
        drive: Larch Lane, after
        note: |
          Dry, 12 °C.
          Damper oil warm.
        car: ../../car.yaml
        phone:
          behind-front-axle: 1.45 m ± 5 cm
          left: 4 in
          up: 20 cm
        pressures:
          front: 2.3 bar
          rear: 30 psi
        after: before
        change: rear springs
        sites:
          chapel hump: [84 s, 141 s]
          bakery table: [1.5 min]
        rejected: [201.5 s]
        added: []

        """;

    [Fact]
    public void Every_key_of_a_drive_is_read_in_its_own_unit()
    {
        using var folder = new TemporaryFolder();
        var reading = Read(folder, Full);
        Assert.Empty(reading.Refusals);
        var sheet = reading.Value!;
        Assert.Equal(("Larch Lane, after", "before", "rear springs"), (sheet.Name, sheet.After, sheet.Change));
        Assert.Equal("Dry, 12 °C.\nDamper oil warm.", sheet.Note);
        Assert.Equal(1.45, sheet.Phone!.BehindFrontAxle.Si, 12);
        Assert.Equal(0.05, sheet.Phone.BehindFrontAxle.Doubt.HalfWidth, 12);
        Assert.Equal(0.1016, sheet.Phone.Left.Si, 12);
        Assert.Equal(2.3e5, sheet.FrontPressure!.Value, 6);
        // 30 pounds-force on a square inch: 30 × 6894.757 Pa (NIST SP 811, appendix B.8).
        Assert.Equal(30.0 * 6894.757, sheet.RearPressure!.Value, 0.1);
        Assert.Equal([("chapel hump", 84.0), ("chapel hump", 141.0), ("bakery table", 90.0)], sheet.Sites);
        Assert.Equal([201.5], sheet.Rejected);
        Assert.Empty(sheet.Added);
        Assert.Equal(
            Path.Combine(folder.Root, "car.yaml"), DriveFile.CarOf(Path.Combine(folder.Root, "drives", "after", "drive.yaml"), sheet, folder.Root));
    }

    [Theory]
    [InlineData("car: ../../car.yaml", "car: ../../none.yaml", "car is ../../none.yaml, which is not there.")]
    [InlineData("car: ../../car.yaml", "car: ../../../car.yaml", "leads out of the folder")]
    [InlineData("car: ../../car.yaml", "car: ../../car.yaml\nload: nobody", "load is \"nobody\", and the car has none of that name.")]
    [InlineData("car: ../../car.yaml", "car: ../../car.yaml\nwheelbase: 2.7 m", "wheelbase is given beside car")]
    [InlineData("car: ../../car.yaml", "load: laden", "load is given without car")]
    [InlineData("car: ../../car.yaml", "wheelbase: 0 m", "wheelbase is 0 m: give 0.5 m to 12 m.")]
    [InlineData("car: ../../car.yaml", "wheelbase: 20 m", "wheelbase is 20 m: give 0.5 m to 12 m.")]
    [InlineData("behind-front-axle: 1.45 m ± 5 cm", "behind-front-axle: 25 m", "phone behind front axle is 25 m: that is no place in a car")]
    [InlineData("behind-front-axle: 1.45 m ± 5 cm", "behind-front-axle: 1.45 m ± 50 m", "its doubt, ± 50 m, says of no place in a car")]
    [InlineData("up: 20 cm", "up: -21 m", "phone up is -21 m: that is no place in a car")]
    [InlineData("after: before", "after: after", "after is after, which is this drive itself.")]
    [InlineData("after: before", "after: ../before", "is no name of a folder beside this one")]
    [InlineData("after: before", "after: nowhere", "is no drive beside this one")]
    [InlineData("rejected: [201.5 s]", "rejected: [201.5]", "unit")]
    [InlineData("added: []", "added: [95 s, 201.5 s]", "201.5 s is added and rejected.")]
    [InlineData("change: rear springs", "take: {luck: mg}", "'luck' is nothing that can be taken otherwise")]
    [InlineData("change: rear springs", "chagne: rear springs", "change")]
    public void What_cannot_be_is_refused_at_its_place(string sound, string slip, string words)
    {
        using var folder = new TemporaryFolder();
        var reading = Read(folder, Full.Replace(sound, slip, StringComparison.Ordinal));
        Assert.Null(reading.Value);
        var refusal = Assert.Single(reading.Refusals);
        Assert.Contains(words, refusal.Message + refusal.Advice, StringComparison.Ordinal);
        Assert.True(refusal.Line > 1);
    }

    [Fact]
    public void All_that_is_wrong_is_told_at_once_in_the_order_of_the_text()
    {
        using var folder = new TemporaryFolder();
        var reading = Read(
            folder,
            """
            drive: Larch Lane, after
            car: ../../none.yaml
            wheelbase: 2.7 m
            pressures:
              front: 2.3
            after: nowhere
            take: {luck: mg}
            rejected: [201.5]

            """);
        Assert.Null(reading.Value);
        Assert.Equal([2, 3, 5, 6, 7, 8], reading.Refusals.Select(r => r.Line));
        reading = Read(folder, "drive: Larch Lane\nload: laden\nwheelbase: 0 m\nafter: after\n");
        Assert.Equal([2, 3, 4], reading.Refusals.Select(r => r.Line));
    }

    [Fact]
    public void A_drive_of_which_only_the_name_is_known_is_sound_and_its_template_lists_every_key()
    {
        using var folder = new TemporaryFolder();
        var text = DriveFile.Template("Lane: \"north\"");
        Assert.Equal("Lane: \"north\"", Read(folder, text).Value!.Name);
        foreach (var key in DriveWords.Shape.Layout.Keys)
        {
            Assert.Contains(key.Name + ":", text, StringComparison.Ordinal);
        }
    }

    private static Heaveline.Files.Yaml.Reading<DriveSheet> Read(TemporaryFolder folder, string text)
    {
        folder.Write("car.yaml", TextCar.Sound);
        folder.Write("drives/before/drive.yaml", "drive: before\n");
        return DriveFile.Load(folder.Write("drives/after/drive.yaml", text));
    }
}
