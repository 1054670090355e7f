/** Two small lists that fit together: battery, fuse, switch and lamp with a plug at the lamp. */
export const connectorExample = `connector,cavity,component,terminal,title
X1,1,E1,1,Plug of the work lamp
X1,2,E1,2,Plug of the work lamp
`;

export const conductorExample = `conductor,from,to,colour,mm2,length
W1,G1:+,F1:1,RD,4,0.6
W2,F1:2,S1:1,RDWH,1.5,1.8
W3,S1:2,X1.1,GY,1.5,2.2
W4,X1.2,XE1,BN,1.5,0.9
W5,G1:-,XE1,BK,16,0.4
`;
