using Heaveline.Cli.Commands;
using Heaveline.Cli.Output;

namespace Heaveline.Tests.Cli;

/// <summary>Where the camera part is looked for, and what is not loaded.</summary>
public class FilmCameraPlacesTests
{
    [Fact]
    public void A_program_that_was_unpacked_somewhere_believes_nothing_but_what_lies_in_its_own_folder()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["Heaveline.slnx"], "");
        foreach (var unpacked in new[] { "heaveline", "x/heaveline", "bin/Release/net10.0", "src/x/bin/net10.0" })
        {
            var program = Directory.CreateDirectory(scratch[unpacked]).FullName;
            Assert.All(
                FilmCameras.Places(program),
                place => Assert.StartsWith(program + Path.DirectorySeparatorChar, place, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void In_a_checkout_it_is_also_where_it_was_built_and_nowhere_where_there_is_no_solution()
    {
        using var scratch = new Scratch();
        var program = Directory.CreateDirectory(scratch["src/Heaveline.Cli/bin/Release/net10.0"]).FullName;
        Assert.All(FilmCameras.Places(program + "/"), place => Assert.StartsWith(program, place, StringComparison.Ordinal));
        File.WriteAllText(scratch["Heaveline.slnx"], "");
        Assert.Equal(
            Path.GetFullPath(scratch["src/Heaveline.Camera/bin/Release/net10.0/Heaveline.Camera.dll"]), FilmCameras.Places(program + "/").Last());
    }

    [Fact]
    public void A_file_that_is_no_camera_part_is_refused_in_words()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["Heaveline.Camera.dll"], "A letter.");
        var none = Assert.Throws<Stopped>(() => FilmCameras.Loaded(scratch["Heaveline.Camera.dll"]));
        Assert.Contains("which cannot be loaded", none.Message, StringComparison.Ordinal);
        var other = Assert.Throws<Stopped>(() => FilmCameras.Loaded(typeof(Xunit.Assert).Assembly.Location));
        Assert.Contains("and the program is of version", other.Message, StringComparison.Ordinal);
        var itself = Assert.Throws<Stopped>(() => FilmCameras.Loaded(typeof(FilmCameras).Assembly.Location));
        Assert.Contains("without what follows a film", itself.Message, StringComparison.Ordinal);
    }
}
