using Heaveline.Files.Garages;
using Heaveline.Web.Frame;
using Microsoft.JSInterop;

namespace Heaveline.Tests.Web;

public class FailureWordsTests
{
    [Fact]
    public void What_a_script_threw_is_told_without_where_it_stood()
    {
        var words = FailureWords.Of(new JSException("Invalid array length\nRangeError: Invalid array length\n    at even (scales.js:44:5)"));
        Assert.Equal("The page's script ended: Invalid array length. Load the page anew; your files are as they were.", words);
        Assert.Equal("No such thing.", FailureWords.Of(new InvalidOperationException("No such thing.\n   at Here()")));
    }

    [Theory]
    [InlineData(GarageKind.Car, "cars")]
    [InlineData(GarageKind.Parts, "lists of parts")]
    [InlineData(GarageKind.Study, "studies of what to buy")]
    [InlineData(GarageKind.Crew, "crews")]
    [InlineData(GarageKind.Ties, "cable ties")]
    public void Several_files_of_a_kind_are_called_so(GarageKind kind, string words) =>
        Assert.Equal(words, GarageKindWords.Several(GarageKindWords.Of(kind)));
}
