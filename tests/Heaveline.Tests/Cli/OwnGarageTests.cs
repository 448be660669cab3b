using Heaveline.Cli.Commands;

namespace Heaveline.Tests.Cli;

public class OwnGarageTests
{
    [Fact]
    public void It_is_made_where_it_can_be_and_found_again()
    {
        var folder = Directory.CreateTempSubdirectory("heaveline-own-").FullName;
        try
        {
            var file = Path.Combine(folder, "a-file");
            File.WriteAllText(file, "");
            var made = OwnGarage.In("", file, folder);
            Assert.Equal(Path.Combine(folder, OwnGarage.Name), made);
            Assert.True(Directory.Exists(made));
            Assert.Equal(made, OwnGarage.In(folder));
            Assert.Null(OwnGarage.In("", file));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
