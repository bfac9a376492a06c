using Workshop.Domain.Contacts;

namespace Workshop.Domain.Tests.Contacts;

/// <summary>Addresses by RFC 5321, 4.1.2 and RFC 5322, 3.4.1; the valid ones stand in RFC 3696, section 3, or follow its rules.</summary>
public class MessageRulesTests
{
    [Theory]
    [InlineData("name@example.org")]
    [InlineData("customer/department=shipping@example.com")]
    [InlineData("$A12345@example.com")]
    [InlineData("!def!xyz%abc@example.com")]
    [InlineData("_somename@example.com")]
    [InlineData("user+mailbox@example.com")]
    [InlineData("a.b.c@xn--bcher-kva.example")]
    public void An_address_of_the_standards_is_taken(string address) => Assert.Equal(address, MessageRules.Address("to", address).Value);

    [Theory]
    [InlineData("name")]
    [InlineData("@example.org")]
    [InlineData("name@")]
    [InlineData("name@host")]
    [InlineData("a@b@example.org")]
    [InlineData(".name@example.org")]
    [InlineData("na..me@example.org")]
    [InlineData("name@-example.org")]
    [InlineData("name@example..org")]
    [InlineData("Name <name@example.org>")]
    [InlineData("name@example.org, other@example.org")]
    [InlineData("name@example.org\r\nBcc: other@example.org")]
    [InlineData("na me@example.org")]
    [InlineData("näme@example.org")]
    public void What_is_no_single_address_is_refused_on_one_line(string address)
    {
        var problem = MessageRules.Address("to", address).Problem!;

        Assert.True(MessageRules.IsOneLine(problem.Sentence));
        Assert.StartsWith("to is \"", problem.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_local_part_longer_than_64_and_an_address_longer_than_254_octets_are_refused()
    {
        var (longest, host) = (new string('a', 64), string.Join('.', Enumerable.Repeat(new string('b', 60), 3)));

        Assert.False(MessageRules.Address("to", $"{longest}@example.org").IsRefused);
        Assert.True(MessageRules.Address("to", $"{longest}a@example.org").IsRefused);
        Assert.True(MessageRules.Address("to", $"{longest}@{host}.{host}").IsRefused);
    }
}
