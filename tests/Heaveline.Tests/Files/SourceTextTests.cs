using Heaveline.Files;

namespace Heaveline.Tests.Files;

public class SourceTextTests
{
    // NIST, examples with intermediate values for FIPS 180-4: SHA-256 of "abc" and of nothing (recomputed with another library).
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    public void The_digest_is_that_of_the_standards_example(string text, string digest) => Assert.Equal(digest, new SourceText("a", text).Sha256);
}
