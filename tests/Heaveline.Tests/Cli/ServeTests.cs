namespace Heaveline.Tests.Cli;

public class ServeTests
{
    // 203.0.113.0/24 is for examples alone [RFC 5737]; the others are the address of many or of a line that nobody named.
    [Theory]
    [InlineData("203.0.113.7")]
    [InlineData("fe80::1")]
    [InlineData("224.0.0.1")]
    [InlineData("255.255.255.255")]
    public void An_address_that_this_machine_has_not_is_refused_with_those_it_has(string address)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("serve", scratch["."], "--port", "0", "--open-to", address);
        Assert.Equal((2, ""), (said.Code, said.Results));
        Assert.StartsWith($"heaveline: --open-to {address}: no address of this machine; it has ", said.Remarks, StringComparison.Ordinal);
    }
}
